import type { Box, Point } from "../../../src/base/index.ts";
import type { Job } from "../../../src/job/index.ts";
import type { LineQuestion, Traced, TracedNet } from "../../../src/scan/index.ts";
import {
  createPageDesk,
  createSession,
  createStore,
  createTraceDesk,
  type Session,
  type TraceAsk,
  type TracePort,
} from "../../../src/session/index.ts";
import { drawing, edit } from "../diagram/drawing.ts";

/** The job with a picture on its sheet. */
export const pictured = (job: Job): Job =>
  edit(job, (draft) => {
    const [sheet] = draft.diagram.sheets;
    if (sheet) sheet.image = { file: "images/page.png", width: 800, height: 600 };
  });

/** F1's pins at 30 and 90, F2's at 230 and 290, height 100; F3's at 230 and 290, height 300. */
export const threeFuses = () =>
  pictured(
    drawing([
      { id: "F1", kind: "fuse", at: [60, 100] },
      { id: "F2", kind: "fuse", at: [260, 100] },
      { id: "F3", kind: "fuse", at: [260, 300] },
    ]),
  );

interface FakePicture {
  readonly nets: readonly TracedNet[];
  readonly questions?: readonly LineQuestion[];
  /** Nets that no pin is on, or that have more doubtful places than those between pins. */
  readonly bare?: readonly TracedNet[];
  readonly bareQuestions?: readonly LineQuestion[];
}

const noPort = () => {
  throw new Error("nobody asks here");
};

/** A session whose picture is what `picture` says, with all that was asked of it. */
export function tracing(job: Job, picture: (ask: TraceAsk) => FakePicture) {
  const session: Session = createSession("job", job);
  const asked: TraceAsk[] = [];
  let bare: readonly TracedNet[] = [];
  let bareQuestions: readonly LineQuestion[] = [];
  const held: (() => void)[] = [];
  const fake = { isHeld: false };
  const port: Partial<TracePort> = {
    open: async () => ({ width: 800, height: 600, lineWidth: 3 }),
    trace: async (ask): Promise<Traced> => {
      asked.push(ask);
      const seen = picture(ask);
      bare = seen.bare ?? [];
      bareQuestions = seen.bareQuestions ?? [];
      if (fake.isHeld) await new Promise<void>((resolve) => held.push(resolve));
      return { nets: seen.nets, questions: seen.questions ?? [], isTooRough: false };
    },
    netAt: async (at: Point) => {
      const net = bare.find(({ box }) => isIn(box, at));
      return net ? { net, questions: bareQuestions } : null;
    },
    crop: async () => null,
    callOff: () => {},
    close: () => {},
  };
  const pages = createPageDesk(
    session,
    () => new Proxy(port as TracePort, orThrow),
    async () => ({
      bytes: new Uint8Array(),
      type: "image/png",
    }),
  );
  const words = createStore<readonly Box[]>([]);
  const desk = createTraceDesk(session, pages, { wait: async () => {}, words });
  const letGo = () => {
    fake.isHeld = false;
    for (const go of held.splice(0)) go();
  };
  return {
    session,
    pages,
    desk,
    asked,
    words,
    hold: () => {
      fake.isHeld = true;
    },
    letGo,
  };
}

const orThrow: ProxyHandler<TracePort> = {
  get: (port, name) => port[name as keyof TracePort] ?? noPort,
};

const isIn = ({ left, top, right, bottom }: Box, [x, y]: Point) =>
  x >= left - 5 && x <= right + 5 && y >= top - 5 && y <= bottom + 5;

/** Lets everything that is under way come to rest. */
export const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
