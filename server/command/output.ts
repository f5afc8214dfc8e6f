import { writeSync } from "node:fs";
import { Socket } from "node:net";
import type { Writable } from "node:stream";

/**
 * Writes texts to the standard output or error, each whole. A failure is reported once, with the disk's reason, and the
 * texts behind it are dropped: they would be taken for the rest of the earlier ones. A reader that went away has seen enough
 * (`loomwright check | head`), and the exit code still says what was found.
 */
export function outputTo(
  stream: Writable & { readonly fd: number },
  lost: (error: NodeJS.ErrnoException) => void,
): (text: string) => void {
  let isLost = false;
  const fail = (error: NodeJS.ErrnoException) => {
    if (!isLost && error.code !== "EPIPE") lost(error);
    isLost = true;
  };
  stream.on("error", fail);
  // Pipes and terminals have a queue, which takes all of a text.
  if (stream instanceof Socket) {
    return (text) => {
      if (!isLost) stream.write(text);
    };
  }
  return (text) => {
    if (isLost || text === "") return;
    try {
      writeAll(stream.fd, Buffer.from(text));
    } catch (error) {
      fail(error as NodeJS.ErrnoException);
    }
  };
}

/** A disk that is nearly full takes a part of a text without an error, and refuses only the next one. */
function writeAll(file: number, bytes: Uint8Array): void {
  for (let written = 0; written < bytes.length; ) written += writeSync(file, bytes, written);
}
