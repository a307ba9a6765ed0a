/** Loaded before the command and each of its threads (`--require`): whoever reaches for the network fails, and says so. */
const [dgram, dns, fs, http, https, net, tls, { syncBuiltinESMExports }] = [
  process.getBuiltinModule('node:dgram'),
  process.getBuiltinModule('node:dns'),
  process.getBuiltinModule('node:fs'),
  process.getBuiltinModule('node:http'),
  process.getBuiltinModule('node:https'),
  process.getBuiltinModule('node:net'),
  process.getBuiltinModule('node:tls'),
  process.getBuiltinModule('node:module'),
];

/** @param {string} name */
const refuse = (name) => () => {
  fs.writeSync(2, `reached for the network: ${name}\n`);
  process.exit(99);
};

/** @type {[name: string, owner: object, members: string[]][]} */
const ways = [
  ['dgram', dgram, ['createSocket']],
  ['dns', dns, ['lookup', 'resolve']],
  ['dns.promises', dns.promises, ['lookup', 'resolve']],
  ['http', http, ['request', 'get', 'createServer']],
  ['https', https, ['request', 'get', 'createServer']],
  ['net', net, ['connect', 'createConnection', 'createServer']],
  ['tls', tls, ['connect', 'createServer']],
  ['global', globalThis, ['fetch', 'WebSocket', 'EventSource']],
];
for (const [name, owner, members] of ways)
  for (const member of members) Object.assign(owner, { [member]: refuse(`${name}.${member}`) });
net.Socket.prototype.connect = refuse('net.Socket.connect');
syncBuiltinESMExports();
