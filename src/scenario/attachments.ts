/** Files that a scenario names. Their text is handed in: nothing here reads a disk. */

export type Attachment =
  | { readonly ok: true; readonly text: string }
  /** Why there is none, to go in brackets: "there is no such file". */
  | { readonly ok: false; readonly reason: string };

/** The text of a file by its path as the scenario writes it, which counts from the scenario's own folder. */
export type Attachments = (path: string) => Attachment;

export const noAttachments: Attachments = () => ({
  ok: false,
  reason: 'files beside the scenario cannot be read here',
});

/** How messages call an attachment: from where the scenario's own path starts. */
export const pathBeside = (scenario: string, path: string): string =>
  scenario.replace(/[^/\\]*$/u, '') + path;
