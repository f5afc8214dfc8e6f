import { writeSync } from "node:fs";
import { Socket } from "node:net";
import type { Writable } from "node:stream";

/**
 * Writes texts to the standard output or error, each whole. A failure is reported once, with the disk's reason, and later texts
 * are dropped: they would look like the continuation of earlier ones. A reader that closed the pipe has seen enough (`loomwright
 * check | head`), and the exit code still reflects the findings.
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
  // Pipes and terminals have a queue, which takes the whole text.
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

/** A disk that is nearly full accepts part of a text without an error, and refuses only the next one. */
function writeAll(file: number, bytes: Uint8Array): void {
  for (let written = 0; written < bytes.length; ) written += writeSync(file, bytes, written);
}
