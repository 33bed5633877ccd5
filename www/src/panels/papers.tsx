// Papers: the picture, the link, the file, and the layouts kept here.

import { useSignal } from "@preact/signals";
import type { JSX } from "preact";
import { useMemo, useRef } from "preact/hooks";
import * as say from "#words";

import { act } from "../acts";
import type { Layout } from "../core";
import { hand, share, shareOrCopy, type Sent } from "../export";
import { Cautions } from "../parts/cautions";
import { Field, Note, Panel } from "../parts/controls";
import { Later } from "../parts/later";
import { Save } from "../parts/save";
import { useTaken } from "../parts/taken";
import { pictureFile, rasterised } from "../raster";
import * as shelf from "../kept";
import * as session from "../session";
import * as state from "../state";
import * as versions from "../versions";
import { KeptAnswers } from "./answered";
import { Crockery } from "./crockery";
import { DatesPart } from "./dates";
import { Guides } from "./guides";
import { Lists } from "./lists";
import { OrderPart } from "./order";
import { OwnShelf } from "./own-shelf";
import { DayPart } from "./day";
import { SeasonPart } from "./season";
import { SeeThrough } from "./see-through";
import { SheetsPart } from "./sheets";
import { Shelf } from "./shelf";
import { TestFrame } from "./test-frame";
import { TwicePart } from "./twice";
import { Versions } from "./versions";

/** Today, as the day a version is sent. */
const today = (): string => new Date().toISOString().slice(0, 10);

function named(layout: Layout): string {
  return (layout.title || "layout").toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-");
}

/** Counts the version up and dates it, once per sending. */
function stamped(): void {
  const layout = state.layout.value;
  if (layout === undefined) return;
  const { revision } = layout;
  act.head({ revision: { ...revision, number: revision.number + 1, date: today() } });
  void versions.keepSent(revision.number + 1);
}

function linkAddress(payload: string): string {
  return `${location.href.split("#")[0] ?? ""}#${payload}`;
}

function LinkPart({ layout }: { layout: Layout }): JSX.Element {
  const made = useSignal("");
  const told = useSignal("");
  const tell = (sent: Sent): void => {
    told.value = sent === "shared" ? say.linkShared : sent === "copied" ? say.linkCopied : "";
  };
  const whole = useSignal(false);
  const other = useSignal(0);
  const name = useSignal("");
  const version = versions.all.value.find(({ made: when }) => when === other.value);
  const called = name.value.trim() || say.versionNow;
  const coded = useRef<{ of: readonly unknown[]; text: string }>({ of: [], text: "" });
  const code = (): string => {
    const core = session.core();
    if (version !== undefined) return core.link_two(called, version.name, version.file);
    return whole.value ? core.link_whole() : core.link();
  };
  /** Made once of what it holds. */
  const address = (): string => {
    const of = [state.layout.value, whole.value, version, called];
    if (of.some((each, n) => each !== coded.current.of[n])) {
      coded.current = { of, text: linkAddress(code()) };
    }
    return coded.current.text;
  };
  const make = (): void => {
    stamped();
    told.value = "";
    made.value = address();
  };
  const older = made.value !== "" && made.value !== address();
  return (
    <section class="panel" aria-label={say.link}>
      <h3>{say.link}</h3>
      <p>{whole.value && version === undefined ? say.linkWholeHolds : say.linkHolds}</p>
      {version === undefined ? (
        <label class="line">
          <span class="name">{say.linkWhole}</span>
          <input
            type="checkbox"
            checked={whole.value}
            onChange={(event) => (whole.value = event.currentTarget.checked)}
          />
        </label>
      ) : null}
      {versions.all.value.length === 0 ? null : (
        <label class="field">
          <span>{say.linkWith}</span>
          <select
            value={version?.made ?? 0}
            onChange={(event) => (other.value = Number(event.currentTarget.value))}
          >
            <option value={0}>{say.linkAlone}</option>
            {versions.all.value.map((each) => (
              <option key={each.made} value={each.made}>
                {each.name}
              </option>
            ))}
          </select>
        </label>
      )}
      {version === undefined ? null : (
        <label class="field">
          <span>{say.linkCalled}</span>
          <input
            value={name.value}
            maxLength={say.MAX_NAME}
            placeholder={say.versionNow}
            onInput={(event) => (name.value = event.currentTarget.value)}
          />
        </label>
      )}
      <button class="tape" {...useTaken(make)}>
        {say.linkMake}
      </button>
      {made.value === "" ? null : (
        <>
          {older ? <p role="status">{say.linkChanged}</p> : null}
          <label class="field">
            <span>{say.linkLength({ count: made.value.length })}</span>
            <input class="link" readOnly value={made.value} onFocus={(e) => e.currentTarget.select()} />
          </label>
          <button
            class="word"
            onClick={() =>
              void shareOrCopy({ title: layout.title, url: made.value })
                .then(tell)
                .catch(() => (told.value = say.linkKept))
            }
          >
            {say.linkShare}
          </button>
          <Code text={made.value} />
        </>
      )}
      <p role="status">{told.value}</p>
    </section>
  );
}

/** The link as a code another camera reads. */
function Code({ text }: { text: string }): JSX.Element {
  const code = useMemo(() => session.core().qr(text) as { size: number; path: string } | undefined, [text]);
  if (code === undefined) return <p class="quiet">{say.codeTooLarge}</p>;
  const { size, path } = code;
  return (
    <div class="code">
      <svg
        viewBox={`0 0 ${size} ${size}`}
        role="img"
        aria-label={say.code}
        shape-rendering="crispEdges"
      >
        <path fill="#fff" d={`M0 0h${size}v${size}h-${size}z`} />
        <path fill="#000" d={path} />
      </svg>
    </div>
  );
}

function PicturePart({ layout }: { layout: Layout }): JSX.Element {
  const told = useSignal("");
  const send = async (kind: "png" | "svg"): Promise<void> => {
    try {
      const drawn = session.core().picture();
      const blob = kind === "png" ? await rasterised(drawn) : pictureFile(drawn);
      const file = new File([blob], `${named(layout)}.${kind}`, { type: blob.type });
      const sent = await share(file, layout.title);
      told.value = sent === "shared" ? say.linkShared : sent === "kept" ? say.pictureReady : "";
    } catch (error) {
      state.fault.value = say.pictureNotMade({ why: session.message(error) });
    }
  };
  return (
    <section class="panel" aria-label={say.picture}>
      <h3>{say.picture}</h3>
      <div class="steps">
        <button class="tape" onClick={() => void send("png")}>
          {say.pictureChat}
        </button>
        <button class="word" onClick={() => void send("svg")}>
          {say.pictureDrawing}
        </button>
      </div>
      <p role="status">{told.value}</p>
      <Save name={named(layout)} title={layout.title} pages={() => [session.core().picture()]} />
      <p class="caution">{say.cautionPapers}</p>
      <Cautions of={["food"]} />
    </section>
  );
}

function Files({ layout }: { layout: Layout }): JSX.Element {
  const open = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    try {
      await session.settled();
      const text = await file.text();
      const several = shelf.backupParts(text);
      if (several !== undefined) {
        const { count, left } = await shelf.restore(several);
        const back = say.filesBack({ count });
        state.said.value = back;
        if (left.length > 0) {
          state.fault.value = [say.filesNotBack({ back, file: file.name }), ...left].join("\n");
        }
      } else {
        await session.openFile(text);
      }
    } catch (error) {
      state.fault.value = `${say.fileNotOpened({ file: file.name })}\n${session.message(error)}`;
    }
  };
  const save = (text: string, name: string): void =>
    hand(new File([text], name, { type: "application/json" }));
  return (
    <section class="panel" aria-label={say.files}>
      <h3>{say.files}</h3>
      <div class="steps">
        <button
          class="word"
          onClick={() => save(session.core().save_json(), `${named(layout)}.json`)}
        >
          {say.fileSave}
        </button>
        <button
          class="word"
          onClick={() => void shelf.backup().then((text) => save(text, `layouts-${today()}.json`))}
        >
          {say.fileSaveAll}
        </button>
      </div>
      <label class="field">
        <span>{say.fileOpen}</span>
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => {
            const input = event.currentTarget;
            void open(input.files?.[0]).then(() => (input.value = ""));
          }}
        />
      </label>
      <p class="quiet">{say.fileKeep}</p>
    </section>
  );
}

export function PapersPanel({ layout }: { layout: Layout }): JSX.Element {
  return (
    <Panel title={say.papers}>
      <Field name={say.title} value={layout.title} take={(title) => act.head({ title })} />
      <PicturePart layout={layout} />
      <SheetsPart layout={layout} name={named(layout)} />
      <Later>
        <Lists layout={layout} />
        <DatesPart layout={layout} name={named(layout)} />
        <OwnShelf layout={layout} />
        <SeasonPart layout={layout} name={named(layout)} />
        <TwicePart layout={layout} />
        <OrderPart layout={layout} />
        <Crockery layout={layout} name={named(layout)} />
        <DayPart layout={layout} />
        <TestFrame layout={layout} />
        <SeeThrough title={layout.title} name={named(layout)} />
        <Guides layout={layout} name={named(layout)} />
        <KeptAnswers />
        <Versions layout={layout} />
        <LinkPart layout={layout} />
        <Note name={say.note} value={layout.note ?? ""} take={(note) => act.head({ note })} />
        <Files layout={layout} />
        <Shelf />
      </Later>
    </Panel>
  );
}
