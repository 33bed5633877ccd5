// Papers: the picture, the link, the file, and the layouts kept here.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";

import { act } from "../acts";
import type { Layout } from "../core";
import { hand, share, shareOrCopy, type Sent } from "../export";
import { Field, Panel } from "../parts/controls";
import { pictureFile, rasterised } from "../raster";
import * as session from "../session";
import * as state from "../state";
import * as store from "../store";

const CAUTION =
  "Heights, flames, glass, heat and food in this plan are for the set: local rules and qualified people decide what is safe.";

/** Today, as the day a version is sent. */
const today = (): string => new Date().toISOString().slice(0, 10);

function named(layout: Layout): string {
  return (layout.title || "layout").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-");
}

/** Counts the version up and dates it, once per sending. */
function stamped(): void {
  const layout = state.layout.value;
  if (layout === undefined) return;
  act.head({ revision: { number: layout.revision.number + 1, date: today() } });
}

export function linkAddress(payload: string): string {
  return `${location.href.split("#")[0] ?? ""}#${payload}`;
}

function LinkPart({ layout }: { layout: Layout }): JSX.Element {
  const made = useSignal("");
  const told = useSignal("");
  const tell = (sent: Sent): void => {
    told.value =
      sent === "shared" ? "Handed to the share sheet." : sent === "copied" ? "Copied." : "";
  };
  return (
    <section class="panel" aria-label="Link for the client">
      <h3>Link for the client</h3>
      <p>
        The link holds the table, its things, hands and crops, the title, version and date. It holds
        no notes, no people’s names and no costs. Anyone who has the link can read it.
      </p>
      <button
        class="tape"
        onClick={() => {
          stamped();
          made.value = linkAddress(session.core().link());
        }}
      >
        Make the link
      </button>
      {made.value === "" ? null : (
        <>
          <label class="field">
            <span>The link, {made.value.length} characters</span>
            <input class="link" readOnly value={made.value} onFocus={(e) => e.currentTarget.select()} />
          </label>
          <button
            class="word"
            onClick={() =>
              void shareOrCopy({ title: layout.title, url: made.value }).then(tell)
            }
          >
            Share or copy the link
          </button>
          <Code text={made.value} />
        </>
      )}
      <p role="status" class="sans">
        {told.value}
      </p>
    </section>
  );
}

/** The link as a code another camera reads. */
function Code({ text }: { text: string }): JSX.Element {
  const code = session.core().qr(text) as { size: number; path: string } | undefined;
  if (code === undefined) {
    return <p class="quiet">This layout is too large for one code; share the link, the picture or the file.</p>;
  }
  const { size, path } = code;
  return (
    <div class="code">
      <svg
        viewBox={`0 0 ${size} ${size}`}
        role="img"
        aria-label="Code that opens the link"
        shape-rendering="crispEdges"
      >
        <path fill="#fff" d={`M0 0h${size}v${size}h-${size}z`} />
        <path fill="#000" d={path} />
      </svg>
    </div>
  );
}

function PicturePart({ layout }: { layout: Layout }): JSX.Element {
  const send = async (kind: "png" | "svg"): Promise<void> => {
    try {
      const drawn = session.core().picture();
      const blob = kind === "png" ? await rasterised(drawn) : pictureFile(drawn);
      const file = new File([blob], `${named(layout)}.${kind}`, { type: blob.type });
      await share(file, layout.title);
    } catch (error) {
      state.fault.value = `The picture was not made (${session.message(error)}). The layout is untouched.`;
    }
  };
  return (
    <section class="panel" aria-label="Picture">
      <h3>Picture</h3>
      <div class="steps">
        <button class="tape" onClick={() => void send("png")}>
          Picture for a chat
        </button>
        <button class="word" onClick={() => void send("svg")}>
          Drawing, to scale
        </button>
      </div>
      <p class="caution">{CAUTION}</p>
    </section>
  );
}

function Files({ layout }: { layout: Layout }): JSX.Element {
  const open = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    try {
      await session.settled();
      const text = await file.text();
      const several = session.backupParts(text);
      if (several !== undefined) {
        const count = await session.restore(several);
        state.said.value = `${count} layouts are back.`;
      } else {
        await session.openFile(text);
      }
    } catch (error) {
      state.fault.value = `${file.name} was not opened. ${session.message(error)} Your work is as it was.`;
    }
  };
  const save = (text: string, name: string): void =>
    hand(new File([text], name, { type: "application/json" }));
  return (
    <section class="panel" aria-label="Files">
      <h3>Files</h3>
      <div class="steps">
        <button
          class="word"
          onClick={() => save(session.core().save_json(), `${named(layout)}.json`)}
        >
          Save as a file
        </button>
        <button
          class="word"
          onClick={() => void session.backup().then((text) => save(text, `layouts-${today()}.json`))}
        >
          Save all layouts in one file
        </button>
      </div>
      <label class="field">
        <span>Open a file</span>
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => void open(event.currentTarget.files?.[0])}
        />
      </label>
      <p class="quiet">
        A browser may clear what lies unused for weeks. A file is yours to keep.
      </p>
    </section>
  );
}

function Shelf(): JSX.Element {
  return (
    <section class="panel" aria-label="Layouts kept here">
      <h3>Kept here</h3>
      <ul class="list">
        {state.kept.value.map((kept) => (
          <li key={kept.id} class="line">
            <button
              class="name"
              aria-current={kept.id === state.layout.value?.id ? "true" : undefined}
              onClick={() => void session.settled().then(() => session.openKept(kept.id))}
            >
              {kept.title || "untitled"}{" "}
              <span class="sans quiet">{new Date(kept.changed).toLocaleDateString()}</span>
            </button>
            {kept.id === state.layout.value?.id ? null : (
              <button
                class="word"
                onClick={() => void store.remove(kept.id).then(session.listKept)}
                aria-label={`Delete ${kept.title || "untitled"} from this device`}
              >
                delete
              </button>
            )}
          </li>
        ))}
      </ul>
      <button class="word" onClick={() => (state.stage.value = "yours")}>
        Lay a new table
      </button>
    </section>
  );
}

export function PapersPanel({ layout }: { layout: Layout }): JSX.Element {
  return (
    <Panel title="Papers">
      <Field name="Title" value={layout.title} take={(title) => act.head({ title })} />
      <PicturePart layout={layout} />
      <LinkPart layout={layout} />
      <Files layout={layout} />
      <Shelf />
    </Panel>
  );
}
