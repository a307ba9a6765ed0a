/** Why a file cannot be read or written, in words. */

const reading: Readonly<Record<string, string>> = {
  ENOENT: 'there is no such file',
  EACCES: 'it may not be read',
  EISDIR: 'it is a folder, not a file',
  ELOOP: 'its links go round in a circle',
  ENOTDIR: 'part of the path is not a folder',
  ENAMETOOLONG: 'the name is too long',
  ENXIO: 'it is not a file',
  ERR_INVALID_ARG_VALUE: 'no file can have such a name',
  ERR_ENCODING_INVALID_ENCODED_DATA: 'it is not UTF-8 text; save it as UTF-8 in a text editor',
};

const writing: Readonly<Record<string, string>> = {
  ...reading,
  ENOENT: 'its folder is not there',
  EACCES: 'nothing may be written there',
  EPERM: 'nothing may be written there',
  EROFS: 'nothing may be written there, the disk is read-only',
  EISDIR: 'a folder of that name is in the way',
  EEXIST: 'a file of that name is in the way',
  ENOTEMPTY: 'a folder of that name is in the way',
  ENOSPC: 'the disk is full; make room and run it again',
  EDQUOT: 'the disk is full; make room and run it again',
  EFBIG: 'it would be larger than files may be here',
};

function reasonIn(words: Readonly<Record<string, string>>, error: unknown): string {
  return words[codeOf(error)] ?? (error instanceof Error ? error.message : String(error));
}

/** What Node calls the way in which something failed: "ENOENT". */
export const codeOf = (error: unknown): string =>
  error instanceof Error && 'code' in error ? String(error.code) : '';

export const whyUnread = (error: unknown): string => reasonIn(reading, error);
export const whyUnwritten = (error: unknown): string => reasonIn(writing, error);
