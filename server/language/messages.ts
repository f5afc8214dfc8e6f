/**
 * The messages between the language server and its own clients beyond the protocol. Plain types and names only: the extension can
 * import this file without anything else. Any other client may ignore all of it.
 */

/** The source action that applies every repair of a plan, on request or on save. */
export const fixAllKind = "source.fixAll.loomwright";

/** Notification, server to client: the state of one plan, or of the server itself. */
export const statusMethod = "loomwright/status";

/** Request: checks every plan of the workspace, shows the findings, and answers with {@link WorkspaceCheck}. No parameters. */
export const checkWorkspaceMethod = "loomwright/checkWorkspace";

/** Request with {@link WorkingParams}: the derivation of the numbers at a position. Answers {@link Working} or null. */
export const workingMethod = "loomwright/working";

type PlanState =
  /** Everything the editor shows was computed from the current texts. */
  | "idle"
  /** Its first check is under way; during a later one, the results of the one before are shown. */
  | "checking"
  /** A file is half typed; the results shown are as of the last complete text. */
  | "incomplete"
  /** The plan could not be checked; `message` gives the reason. */
  | "failed"
  /** No plan any more: it no longer imports the library, or another plan imports it, or it was closed. */
  | "gone";

export interface StatusParams {
  /** Root file of the plan; absent if the message is about the server itself. */
  readonly uri?: string;
  /** The editor's version of the root for this state; absent if the root is not open in the editor. */
  readonly version?: number;
  /** The editor's versions of all open files of the plan, by URI as the editor writes it. */
  readonly versions?: Readonly<Record<string, number>>;
  readonly state: PlanState;
  /** One line for people. */
  readonly message: string;
  /** From the newest complete check; absent before the first. */
  readonly counts?: Counts;
}

/** The counts of a plan. Accepted findings count only as accepted. */
export interface Counts {
  readonly circuits: number;
  /** Those of the plan's network; 0 if it has none, or none that could be read. */
  readonly parts: number;
  readonly cables: number;
  readonly errors: number;
  readonly warnings: number;
  readonly infos: number;
  readonly hints: number;
  readonly accepted: number;
}

export interface WorkspaceCheck {
  readonly plans: readonly PlanCheck[];
  /** Files that look like plans, or belong to one, and were not judged. */
  readonly passedBy: readonly PassedFile[];
}

export interface PassedFile {
  readonly uri: string;
  /** One line for people: the file and why it was not judged. */
  readonly message: string;
  /** A hazard may be in it: the check did not reach its end. */
  readonly mayHideHazard: boolean;
}

export interface PlanCheck {
  /** Root file of the plan. */
  readonly uri: string;
  readonly state: "idle" | "incomplete" | "failed";
  readonly message: string;
  /** Absent if the plan is half typed or could not be checked. */
  readonly counts?: Counts;
}

export interface WorkingParams {
  readonly textDocument: { readonly uri: string };
  /** Zero-based line, zero-based character in UTF-16 units. */
  readonly position: { readonly line: number; readonly character: number };
}

export interface Working {
  /** Name of the circuit, cable, part or scenario. */
  readonly circuit: string;
  /** The whole derivation, with formulas, actual numbers and sources. */
  readonly markdown: string;
}

/** Request with {@link DiagramParams}: the picture of the plan that a file belongs to. Answers {@link Diagram} or null. */
export const diagramMethod = "loomwright/diagram";

export interface DiagramParams {
  readonly textDocument: { readonly uri: string };
  readonly view: "one-line" | "wiring";
  /** Name of the scenario whose currents and voltages are shown; absent, or no longer in the plan: none. */
  readonly scenario?: string;
  /** The colour edition: each conductor in the colour of its insulation. Absent: in the colour of the text. */
  readonly colours?: boolean;
}

/** The picture of one plan, and related data. */
export interface Diagram {
  /** Root file of the plan. */
  readonly uri: string;
  /** The editor's versions of all open files of the plan, by URI as the editor writes it: every `location` refers to these. */
  readonly versions: Readonly<Record<string, number>>;
  /** The plan's title, fit to be shown. */
  readonly title: string;
  /** Whether the picture was computed from exactly {@link versions}. False: it is as of the last complete text. */
  readonly current: boolean;
  readonly view: DiagramParams["view"];
  readonly colours: boolean;
  /** Sentences about the plan as a whole: the parts that could not be read, run or solved, and so are not in the picture. */
  readonly notes: readonly string[];
  /** Absent if there was never a complete text to draw; `notes` gives the reason. */
  readonly picture?: Picture;
  /** Names of the plan's scenarios, in their order. */
  readonly scenarios: readonly string[];
  /** The one that is shown. */
  readonly scenario?: string;
}

export interface Picture {
  /** For the screen: colours come from the page around it. */
  readonly svg: string;
  /** All elements that can be pointed at, in reading order. */
  readonly elements: readonly DiagramElement[];
  /** The element where reading begins: the first battery; absent if there is none. */
  readonly start?: string;
}

export interface DiagramElement {
  /** `data-element` of its group in the picture. */
  readonly id: string;
  readonly kind: "part" | "conductor" | "protection";
  readonly name: string;
  readonly description: string;
  readonly severity?: "error" | "warning" | "info" | "hint";
  readonly findings: readonly string[];
  /** Its feed, fuse, drop and margin, as far as they are known. */
  readonly facts?: readonly DiagramFact[];
  /** In the coordinates of the SVG. */
  readonly box: { readonly x: number; readonly y: number; readonly width: number; readonly height: number };
  /** Its place in the current texts; absent if that was edited away. */
  readonly location?: {
    readonly uri: string;
    readonly range: {
      readonly start: { readonly line: number; readonly character: number };
      readonly end: { readonly line: number; readonly character: number };
    };
  };
}

/** "Fuse", "7.5 A at fuse panel". */
export interface DiagramFact {
  readonly label: string;
  readonly value: string;
}

/** Request with {@link EnergyParams}: whether the banks of a plan keep up. Answers {@link EnergyView} or null. May be cancelled. */
export const energyMethod = "loomwright/energy";

export interface EnergyParams {
  readonly textDocument: { readonly uri: string };
  /** Name of the period; absent, or no longer in the plan: the first. */
  readonly period?: string;
  /** Place in its banks; absent, or no longer there: the first. */
  readonly bank?: number;
  /** From 0: the month whose worst week is drawn; absent, or not in the period: the worst. */
  readonly month?: number;
  /** The figures as if this lever had been moved. No text is changed. */
  readonly move?: LeverMove;
  /** The least single changes are wanted too: they cost as much as several keystrokes. */
  readonly least?: boolean;
}

export interface LeverMove {
  /** {@link EnergyLever.id} */
  readonly lever: string;
  readonly value: number;
}

export interface EnergyView {
  /** Root file of the plan. */
  readonly uri: string;
  /** The editor's versions of all open files of the plan, by URI as the editor writes it. */
  readonly versions: Readonly<Record<string, number>>;
  readonly title: string;
  /** Whether the figures were computed from exactly {@link versions}. */
  readonly current: boolean;
  /** Sentences about the whole: the reason why there are no figures, or anything that is missing from them. */
  readonly notes: readonly string[];
  readonly periods: readonly string[];
  /** Undefined: there are no figures. */
  readonly shown?: {
    readonly period: string;
    readonly banks: readonly string[];
    readonly bank: number;
    /** Sentences about the whole period. */
    readonly summary: readonly string[];
    readonly months: readonly EnergyMonth[];
    /** The month whose week is drawn, from 0. */
    readonly month: number;
    /** For the screen. */
    readonly week: { readonly svg: string; readonly title: string; readonly description: string };
    readonly levers: readonly EnergyLever[];
    /** If they are wanted: the single changes with which the bank keeps up, in words, and sentences about all of them. */
    readonly least?: {
      readonly notes: readonly string[];
      readonly rows: readonly {
        readonly change: string;
        readonly now: string;
        readonly least: string;
        readonly step: string;
      }[];
    };
  };
}

export interface EnergyMonth {
  /** From 0. */
  readonly month: number;
  readonly name: string;
  /** One character for the verdict, and its words. */
  readonly sign: string;
  readonly verdict: string;
  /** Wh a day, and percent of a full charge, in words. */
  readonly use: string;
  readonly yield: string;
  readonly missing: string;
  readonly lowest: string;
}

/** A number in the text that can be moved. */
export interface EnergyLever {
  readonly id: string;
  /** "house: capacity". */
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly from: number;
  readonly most: number;
  readonly step: number;
  /** Before it is let go: "sets 2 values", "is not in the text yet and would be added"; "" if there is nothing to say. */
  readonly hint: string;
  /** It cannot be moved; a sentence with the reason. */
  readonly fixed?: string;
}

/** Request with {@link MoveParams}: the text edits of a lever. Changes no text itself. Answers {@link MoveAnswer}. */
export const moveMethod = "loomwright/moveLever";

export interface MoveParams {
  readonly textDocument: { readonly uri: string };
  /** Those of the figures that the lever belongs to. */
  readonly versions: ShownVersions;
  readonly move: LeverMove;
}

/** The text edits of a change that was tried in a view, for the client to apply as one step. */
export type MoveAnswer =
  | { readonly state: "edits"; readonly edits: readonly TextChange[] }
  /** Nothing is to be changed; a sentence with the reason. */
  | { readonly state: "dropped"; readonly message: string };

export interface TextChange {
  readonly uri: string;
  readonly version: number;
  readonly range: TextRange;
  readonly newText: string;
}

interface TextRange {
  readonly start: { readonly line: number; readonly character: number };
  readonly end: { readonly line: number; readonly character: number };
}

/** Of each open file of the plan that somebody looks at. */
export type ShownVersions = readonly { readonly uri: string; readonly version: number }[];

/**
 * Request with {@link BoardsParams}: the surfaces of a plan with their parts, channels and conductors. Answers {@link BoardsView} or null. May be cancelled.
 */
export const boardsMethod = "loomwright/boards";

export interface BoardsParams {
  readonly textDocument: { readonly uri: string };
  /** Draw the conductors along their ways. */
  readonly conductors?: boolean;
  /** The view as if these parts were there. No text is changed. */
  readonly tried?: {
    /** Those of the view that the parts belong to. */
    readonly versions: ShownVersions;
    readonly places: readonly TriedPlace[];
  };
}

/** A part, and its place on a surface: the distances of its outline, as it is then turned, from the edges of the surface. */
export interface TriedPlace {
  /** {@link BoardPart.record} */
  readonly record: number;
  /** {@link BoardSurface.record} */
  readonly on: number;
  /** In {@link BoardPart.unit}. */
  readonly left: number;
  readonly top: number;
  readonly turnedDeg: QuarterTurn;
}

export type QuarterTurn = 0 | 90 | 180 | 270;

export interface BoardsView {
  /** Root file of the plan. */
  readonly uri: string;
  /** The editor's versions of all open files of the plan, by URI as the editor writes it. */
  readonly versions: Readonly<Record<string, number>>;
  readonly title: string;
  /** Whether it was computed from exactly {@link versions}. */
  readonly current: boolean;
  /** Sentences about the whole: the reason why there is no surface, or anything that is missing. */
  readonly notes: readonly string[];
  readonly surfaces: readonly BoardSurface[];
  /** Those on a surface, and those without any place, each in the order of the plan. */
  readonly parts: readonly BoardPart[];
  readonly conductors: readonly BoardConductor[];
  /** Of a view with tried places: the differences from the text. */
  readonly tried?: {
    /** A sentence each. */
    readonly newFindings: readonly string[];
    readonly goneFindings: readonly string[];
    /** Conductors whose length changes: "Fridge, positive: 1.2 m → 1.35 m; drop 0.8 % → 0.9 %". */
    readonly lengths: readonly string[];
  };
}

/** Lengths in mm, x to the right and y down from its top left corner. */
export interface BoardSurface {
  /** Number of the call that made it. */
  readonly record: number;
  readonly name: string;
  /** "1,200 × 800 mm". */
  readonly size: string;
  readonly width: number;
  readonly height: number;
  /** That of its own size. */
  readonly unit: "mm" | "in";
  readonly picture: BoardPicture;
  readonly location?: { readonly uri: string; readonly range: TextRange };
}

export interface BoardPicture {
  /** For the screen: colours come from the page around it. */
  readonly svg: string;
  /** The drawing in the units of the SVG; the corner of the surface in it; and the units that a millimetre has. */
  readonly width: number;
  readonly height: number;
  readonly x: number;
  readonly y: number;
  readonly perMm: number;
}

export interface BoardPart {
  /** Number of the call that made it. */
  readonly record: number;
  readonly name: string;
  /** Its outline upright, mm; absent if its size is not stated. */
  readonly size?: { readonly width: number; readonly height: number };
  /** Absent if it has none yet. */
  readonly place?: {
    /** {@link BoardSurface.record} */
    readonly on: number;
    /** Its outline as it is turned, mm. */
    readonly left: number;
    readonly top: number;
    readonly width: number;
    readonly height: number;
    readonly turnedDeg: QuarterTurn;
    /** "120 mm from the left, 80 mm from the top, upright". */
    readonly words: string;
    /** Other parts that it overlaps, by record. */
    readonly overlaps: readonly number[];
  };
  /** The unit of its place in the text; absent without a place: that of the surface. */
  readonly unit?: "mm" | "in";
  /** It cannot be moved or put on a surface; a sentence with the reason. */
  readonly fixed?: string;
  readonly severity?: "error" | "warning" | "info" | "hint";
  readonly findings: readonly string[];
  readonly location?: { readonly uri: string; readonly range: TextRange };
}

export interface BoardConductor {
  /** "Fridge, positive". */
  readonly name: string;
  /** Along its way, with the slack of the plan: "1.2 m"; a sentence if it has none. */
  readonly length: string;
  /** "0.8 % from the bank, limit 3 %"; absent if not known. */
  readonly drop?: string;
  readonly location?: { readonly uri: string; readonly range: TextRange };
}

/** Request with {@link PlacePartsParams}: the text edits of parts that were put somewhere. Changes no text itself. Answers {@link MoveAnswer}. */
export const placePartsMethod = "loomwright/placeParts";

export type PlacePartsParams = Required<Omit<BoardsParams, "conductors">>;

/**
 * Request with {@link ArrangementParams}: places on a surface for the parts that have a size and no place yet, tried in the plan. It takes
 * seconds, in steps between which other requests are answered, and reports its progress as the protocol has it. Changes no text.
 * Answers {@link ArrangementAnswer}. May be cancelled.
 */
export const arrangementMethod = "loomwright/arrangement";

export interface ArrangementParams extends Pick<BoardsParams, "textDocument" | "conductors"> {
  /** Those of the view that shows the surface. */
  readonly versions: ShownVersions;
  /** {@link BoardSurface.record} */
  readonly on: number;
  /** For `$/progress`, with a message as a sentence; absent: no progress is reported. */
  readonly workDoneToken?: string | number;
}

export type ArrangementAnswer =
  | {
      readonly state: "suggested";
      /** For {@link placePartsMethod}, which then writes them as edits of one file. */
      readonly places: readonly TriedPlace[];
      /** Sentences: copper and number of findings today and with these places, and the parts that were left out. */
      readonly facts: readonly string[];
      /** The view with the parts there. */
      readonly boards: BoardsView;
    }
  /** `message`: a sentence with the reason. */
  | { readonly state: "none"; readonly message: string };

/** Request with {@link ReportParams}: writes the report of a plan. Answers {@link ReportAnswer}. May be cancelled. */
export const reportMethod = "loomwright/report";

export interface ReportParams {
  readonly textDocument: { readonly uri: string };
  /** Path of the file to write; `.html` or `.pdf` selects the format. */
  readonly path: string;
  readonly page: "A4" | "Letter" | "A3";
  /** For its facts and the title blocks: a text, or the last commit. Left out: none. */
  readonly revision?: { readonly text: string } | "commit";
  /** `bench`: only the drawing, the wire schedule, the fuse map and the checks before first power. Left out: everything. */
  readonly edition?: "inspector" | "bench";
  /** Also overwrite a file that Loomwright did not make. */
  readonly force: boolean;
}

export type ReportAnswer =
  | {
      readonly state: "written";
      readonly path: string;
      /** Characters that the typeface of a PDF lacks, with spaces between; "" if it has all. */
      readonly missing: string;
    }
  /** There is a file that is not ours; a second request with `force` replaces it. */
  | { readonly state: "not-ours"; readonly message: string }
  | { readonly state: "failed"; readonly message: string };

/** Request with {@link DocumentParams}: writes a document of a plan. Answers {@link DocumentAnswer}. May be cancelled. */
export const documentMethod = "loomwright/document";

export interface DocumentParams {
  readonly textDocument: { readonly uri: string };
  /**
   * `drawing`: the diagram. `boards`: the front views of all surfaces. `templates`: their drilling templates, in true size. `labels`:
   * those of the wires, on label sheets. `lists`: each list as a file of its own. `numbers`: a permanent number for each wire, beside
   * the plan.
   */
  readonly document: "drawing" | "boards" | "templates" | "labels" | "lists" | "numbers";
  /** The file to write, whose ending selects the format; for lists the folder. Not needed for numbers. */
  readonly path?: string;
  /** Of a drawing; absent: the wiring. */
  readonly view?: DiagramParams["view"];
  /** Name of the scenario whose currents and voltages a drawing shows; absent: none. */
  readonly scenario?: string;
  /** Of a drawing: the colour edition. Absent: black on white. */
  readonly colours?: boolean;
  /** Of front views: the conductors along their ways. */
  readonly conductors?: boolean;
  /**
   * Paper of a drawing or of front views as PDF, absent for sheets as large as the drawings; of templates, absent for A4; for labels the
   * paper of their sheets, not A3.
   */
  readonly page?: ReportParams["page"];
  /** For the title block of a drawing or a front view. */
  readonly revision?: ReportParams["revision"];
  /** Also overwrite files that Loomwright did not make. */
  readonly force: boolean;
}

export type DocumentAnswer =
  | {
      readonly state: "written";
      /** The files, with absolute paths. */
      readonly paths: readonly string[];
      /** Further sentences about them; "" if there are none. */
      readonly note: string;
    }
  /** There are files that are not ours; a second request with `force` replaces them. */
  | { readonly state: "not-ours"; readonly message: string }
  | { readonly state: "failed"; readonly message: string };

/**
 * Request with {@link DifferenceParams}: compares the plans that a file belongs to, as they are in the editor, with the last
 * commit. Answers {@link DifferenceAnswer}.
 */
export const differenceMethod = "loomwright/difference";

export interface DifferenceParams {
  readonly textDocument: { readonly uri: string };
}

export type DifferenceAnswer =
  | {
      readonly state: "compared";
      /** The title of the page: the plan's name. */
      readonly title: string;
      readonly markdown: string;
    }
  /** There is no repository, no commit, or no plan. */
  | { readonly state: "cannot"; readonly message: string };
