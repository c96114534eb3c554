import type { Grey, Quad, Rgba } from "../../../src/scan/index.ts";

/** A matrix of pixels in the library's own memory, to be given back by hand. */
interface Mat {
  readonly data: Uint8Array;
  delete(): void;
}

/** The few calls of OpenCV that are used here, which its types for scripts do not name. */
interface OpenCv {
  readonly Mat: new (...size: number[]) => Mat;
  readonly MatVector: new () => { size(): number; get(n: number): Mat; delete(): void };
  readonly Size: new (width: number, height: number) => object;
  readonly Point: new (x: number, y: number) => object;
  readonly Scalar: new (...values: number[]) => object;
  readonly Rect: new () => object;
  readonly [constant: string]: unknown;
  onRuntimeInitialized?: () => void;
}
type Call = (...given: unknown[]) => unknown;

/** A step of a general-purpose image library on its own copy of the picture's pixels. */
export interface LibraryStep {
  run(): void;
  /** Gives the copy back. */
  close(): void;
}

export interface ImageLibrary {
  readonly name: string;
  /** Canny, contours, and the largest with four corners. */
  corners(grey: Grey): LibraryStep;
  /** `warpPerspective`, bilinear, in colour. */
  warp(picture: Rgba, corners: Quad): LibraryStep;
  /** Paper tone by a wide closing, divided out; adaptive threshold; pieces of ink counted for specks. */
  clean(picture: Rgba): LibraryStep;
  /** Adaptive threshold, specks by opening, pieces of ink, distance to paper. */
  prepare(grey: Grey): LibraryStep;
  /** Adaptive threshold and the pieces of ink, as the outlines of each. */
  outlines(grey: Grey): LibraryStep;
  /** A flood fill of the ink from a place. */
  flood(grey: Grey, x: number, y: number): LibraryStep;
  /** Letters run together by a wide dilation, and the boxes of what that gives. */
  words(grey: Grey): LibraryStep;
  /** A template of so many pixels held against every place of the page at half its size. */
  template(grey: Grey, side: number): LibraryStep;
}

/** OpenCV 4.5 as compiled for scripts (@techstark/opencv-js, Apache-2.0). */
export async function openImageLibrary(): Promise<ImageLibrary> {
  const cv = (await import("@techstark/opencv-js")).default as unknown as OpenCv;
  if (!cv.Mat) await new Promise<void>((done) => (cv.onRuntimeInitialized = done));
  const call = (name: string, ...given: unknown[]) => (cv[name] as Call)(...given);
  const is = (name: string) => cv[name] as number;
  const mat = (type: "CV_8UC1" | "CV_8UC4", { width, height, data }: Grey | Rgba): Mat => {
    const made = new cv.Mat(height, width, is(type));
    made.data.set(data);
    return made;
  };
  /** Runs with as many empty matrices as it takes, and gives all back. */
  const withMats = (work: (...mats: Mat[]) => void) => {
    const mats = Array.from({ length: work.length }, () => new cv.Mat());
    work(...mats);
    for (const one of mats) one.delete();
  };
  const step = (page: Mat, work: (...mats: Mat[]) => void): LibraryStep => ({
    run: () => withMats(work),
    close: () => page.delete(),
  });
  const brush = (width: number, height: number) =>
    call("getStructuringElement", is("MORPH_RECT"), new cv.Size(width, height)) as Mat;
  const inkOf = (grey: Mat, ink: Mat) =>
    call(
      "adaptiveThreshold",
      grey,
      ink,
      255,
      is("ADAPTIVE_THRESH_MEAN_C"),
      is("THRESH_BINARY_INV"),
      41,
      12,
    );
  const contours = (bits: Mat, each: (outline: Mat) => void) => {
    const list = new cv.MatVector();
    withMats((tree) => {
      call("findContours", bits, list, tree, is("RETR_LIST"), is("CHAIN_APPROX_SIMPLE"));
    });
    for (let n = 0; n < list.size(); n++) {
      const outline = list.get(n);
      each(outline);
      outline.delete();
    }
    list.delete();
  };

  return {
    name: "OpenCV",
    corners(grey) {
      const page = mat("CV_8UC1", grey);
      return step(page, (small, edges, corners) => {
        const times = Math.max(grey.width, grey.height) / 960;
        const size = new cv.Size(Math.round(grey.width / times), Math.round(grey.height / times));
        call("resize", page, small, size, 0, 0, is("INTER_AREA"));
        call("Canny", small, edges, 50, 150);
        contours(edges, (outline) => {
          const around = call("arcLength", outline, true) as number;
          call("approxPolyDP", outline, corners, 0.02 * around, true);
          call("contourArea", corners);
        });
      });
    },
    warp(picture, corners) {
      const { width, height } = picture;
      const page = mat("CV_8UC4", picture);
      const quad = (points: readonly (readonly [number, number])[]) =>
        call("matFromArray", 4, 1, is("CV_32FC2"), points.flat()) as Mat;
      return step(page, (out) => {
        const [from, to] = [
          quad(corners),
          quad([
            [0, 0],
            [width, 0],
            [width, height],
            [0, height],
          ]),
        ];
        const matrix = call("getPerspectiveTransform", from, to) as Mat;
        call("warpPerspective", page, out, matrix, new cv.Size(width, height));
        for (const one of [from, to, matrix]) one.delete();
      });
    },
    clean(picture) {
      const page = mat("CV_8UC4", picture);
      return step(page, (grey, paper, flat, ink, labels, stats, middles) => {
        call("cvtColor", page, grey, is("COLOR_RGBA2GRAY"));
        const wide = brush(41, 41);
        call("morphologyEx", grey, paper, is("MORPH_CLOSE"), wide);
        wide.delete();
        call("divide", grey, paper, flat, 255);
        inkOf(flat, ink);
        call("connectedComponentsWithStats", ink, labels, stats, middles);
      });
    },
    prepare(grey) {
      const page = mat("CV_8UC1", grey);
      return step(page, (ink, clean, labels, stats, middles, far) => {
        inkOf(page, ink);
        const small = brush(2, 2);
        call("morphologyEx", ink, clean, is("MORPH_OPEN"), small);
        small.delete();
        call("connectedComponentsWithStats", clean, labels, stats, middles);
        call("distanceTransform", clean, far, is("DIST_L2"), 3);
      });
    },
    outlines(grey) {
      const page = mat("CV_8UC1", grey);
      return step(page, (ink, labels) => {
        inkOf(page, ink);
        call("connectedComponents", ink, labels);
        contours(ink, () => {});
      });
    },
    flood(grey, x, y) {
      const page = mat("CV_8UC1", grey);
      const ink = new cv.Mat();
      inkOf(page, ink);
      page.delete();
      // A fill changes what it fills: to 128 and back to 255 are two clicks.
      let to = 128;
      return step(ink, (mask) => {
        call("floodFill", ink, mask, new cv.Point(x, y), new cv.Scalar(to), new cv.Rect());
        to = 383 - to;
      });
    },
    words(grey) {
      const page = mat("CV_8UC1", grey);
      return step(page, (ink, thick, labels, stats, middles) => {
        inkOf(page, ink);
        const wide = brush(25, 5);
        call("morphologyEx", ink, thick, is("MORPH_DILATE"), wide);
        wide.delete();
        call("connectedComponentsWithStats", thick, labels, stats, middles);
      });
    },
    template(grey, side) {
      const page = mat("CV_8UC1", grey);
      return step(page, (small, match) => {
        const size = new cv.Size(grey.width >> 1, grey.height >> 1);
        call("resize", page, small, size, 0, 0, is("INTER_AREA"));
        const symbol = new cv.Mat(side, side, is("CV_8UC1"));
        symbol.data.fill(255);
        symbol.data.fill(0, side * (side >> 1), side * ((side >> 1) + 3));
        call("matchTemplate", small, symbol, match, is("TM_CCOEFF_NORMED"));
        symbol.delete();
      });
    },
  };
}
