// What a remedy did, as the line beside "Undo" says it.

import * as say from "#words";

import type { Layout } from "./core";
import * as state from "./state";

/** A linen that was folded before and is not now was laid; else the act is named. */
export function remedyDone(act: string, before: Layout["linens"]): string {
  const now = state.layout.value?.linens ?? [];
  const laid = before.find(({ id, state: was }) =>
    was === "folded" && now.some((linen) => linen.id === id && linen.state !== "folded"),
  );
  return laid === undefined ? say.remedyDone({ act }) : say.linenLaid({ linen: laid.name });
}
