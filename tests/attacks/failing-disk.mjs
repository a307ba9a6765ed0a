/**
 * Loaded before the command (`--import`): the write, addition or renaming with the number FAILS_AT goes wrong. A write gets half way.
 * FAILS_WITH says how: "SIGKILL" ends the process on the spot, anything else is the code of an error.
 */
import fs from 'node:fs/promises';
import { syncBuiltinESMExports } from 'node:module';
import { setTimeout } from 'node:timers/promises';

const failsAt = Number(process.env['FAILS_AT']);
const how = process.env['FAILS_WITH'] ?? '';
const { open, writeFile, rename } = fs;
let count = 0;

/** @param {() => Promise<void>} halfWay */
async function fail(halfWay) {
  await halfWay();
  if (how === 'SIGKILL') process.kill(process.pid, how);
  // Only a signal comes later than the call.
  if (how === 'SIGKILL') await setTimeout(10_000);
  throw Object.assign(new Error(`${how}: said by a test`), { code: how });
}

fs.writeFile = async (path, text, options) => {
  count += 1;
  if (count !== failsAt) return writeFile(path, text, options);
  return fail(() => writeFile(path, String(text).slice(0, String(text).length / 2), options));
};
fs.open = async (...args) => {
  const file = await open(...args);
  const appendFile = file.appendFile.bind(file);
  file.appendFile = async (text, options) => {
    count += 1;
    if (count !== failsAt) return appendFile(text, options);
    return fail(() => appendFile(String(text).slice(0, String(text).length / 2), options));
  };
  return file;
};
fs.rename = async (from, to) => {
  count += 1;
  return count === failsAt ? fail(() => Promise.resolve()) : rename(from, to);
};
syncBuiltinESMExports();
