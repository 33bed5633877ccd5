// A screen in memory, for browsers that need one.

import { spawn } from "node:child_process";
import { once } from "node:events";
import { createInterface } from "node:readline";

/** Starts a program that stays; `stop` ends it and waits until it has. */
export function stay(program, words, options) {
  const child = spawn(program, words, options);
  const ended = new Promise((resolve) => {
    child.once("exit", resolve);
    child.once("error", (error) => {
      console.error(`${program}: ${error.message}`);
      resolve();
    });
  });
  const stop = () => {
    child.kill();
    return ended;
  };
  return { child, stop };
}

/** A screen in memory, under the first number that is free. */
export async function screen() {
  const { child, stop } = stay("Xvfb", ["-displayfd", "3", "-screen", "0", "1280x1024x24"], {
    stdio: ["ignore", "ignore", "ignore", "pipe"],
  });
  const [number] = await Promise.race([
    once(createInterface({ input: child.stdio[3] }), "line"),
    once(child, "exit").then(() => Promise.reject(new Error("Xvfb gave no screen"))),
  ]);
  return { display: `:${number}`, stop };
}
