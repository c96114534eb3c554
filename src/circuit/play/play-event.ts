/** What happened by itself because of a step, with the time since the play began. */
export type PlayEvent = { readonly seconds: number } & (
  | { readonly what: "pulled-in" | "dropped-out"; readonly part: string }
  /** A module woke, or went dead for want of supply or ground. */
  | { readonly what: "powered" | "unpowered"; readonly part: string }
  /** A module closed or opened a path of its own. */
  | {
      readonly what: "path-closed" | "path-opened";
      readonly part: string;
      readonly between: readonly [string, string];
    }
  /** A load came on, or went off. */
  | { readonly what: "on" | "off"; readonly part: string }
  /** A fuse or breaker opened: what it carried, and the parts that drew it, the largest first. */
  | {
      readonly what: "blew";
      readonly part: string;
      readonly amps: number;
      readonly drawnBy: readonly string[];
    }
  /** Relays or modules that chatter: each undoes what keeps it as it is. */
  | { readonly what: "oscillates"; readonly parts: readonly string[] }
);
