// Made by scripts/generate-client from the server's messages: do not edit.

export interface Accepted {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  /** The rule's code. */
  rule: string;
  /** The thing it is about; None: everything that the rule finds. */
  subject?: string | null;
  because: string;
}

export interface Add {
  do: "add";
  to: string;
  record: Record<string, unknown>;
}

export interface AttachmentChange {
  what: "removed" | "put back";
  author: string;
}

export interface AttachmentLine {
  number: number;
  name: string;
  kind: string;
  /** Key of what it is about, such as `devices/hall-movement`; empty: the job as a whole. */
  about: string;
  /** What people call that. */
  about_name: string;
  at: string;
  author: string;
  note: string;
  size_bytes: number;
  starred_lines: number;
  /** Empty: it is there. */
  removed_at: string;
  removed_by: string;
}

export interface BatteryDay {
  /** As ISO 8601 has it. */
  on: string;
  /** Of the devices. */
  names: string[];
  /** Whether it is counted from today, since nobody said since when they have their cells. */
  is_counted: boolean;
  is_past: boolean;
}

export interface Behaviour {
  id: string;
  name: string;
  /** When nothing is running, its signal starts the entry time instead of an alarm. */
  starts_entry?: boolean;
  /** While the entry time runs, its signal is taken as part of the way in. */
  allowed_after_entry?: boolean;
  /** Otherwise its signal is an alarm at once; False: it is only written to the log. */
  alarms?: boolean;
  /** Also when unset. */
  is_always_active?: boolean;
  /** Its alarm's message waits for the abort delay. */
  delays_message?: boolean;
  /** What its alarm says: the programme's responses tell what follows. */
  signal?: "intruder" | "tamper" | "hold-up" | "fire" | "water" | "fault";
  /** Whether it can be left out for one setting, such as with a window open. */
  may_be_inhibited?: boolean;
}

export interface Board {
  kind: "board";
  revision: number;
  /** Of the trial that it answers; None: it is of the house as kept. */
  number: number | null;
  /** Keys of all answers, worst first. */
  order: string[];
  answers: BoardAnswer[];
  /** Keys of the answers from before: their questions are asked again once what is tried stands still. */
  waiting: string[];
  /** None: as sent last. */
  findings: BoardFinding[] | null;
  /** By device: its letters on the plan. */
  tags: Record<string, string>;
  /** By storey: what lies over the house, as SVG groups. */
  overlays: Record<string, string>;
  /** The strip of time of the answer that is shown, as SVG; empty: it has none. */
  strip: string;
  /** The walk of the answer that is shown, for playing; empty: it has none. */
  walk: WalkLine[];
  /** How long the answers took to work out. [ms] */
  engine_ms: number;
  /** How long they took to put into words and ink. [ms] */
  drawing_ms: number;
  /** Why a trial cannot be answered; empty where it can. */
  fault: string;
}

export interface BoardAnswer {
  /** The same for the same question about the same thing, whatever the answer. */
  key: string;
  question: number;
  question_name: string;
  subject: string;
  subject_id: string;
  /** On which it is; empty: it is of the whole house. */
  storey: string;
  /** Ids of all things that it has to do with. */
  about: string[];
  measure: string;
  verdict: "good" | "thin" | "bad" | "unknown";
  verdict_word: string;
  value: string;
  range: string;
  /** None: it has no number, or one that stands for never. */
  span: BoardSpan | null;
  chance: string;
  reason: string;
  basis: "measured" | "told" | "guessed" | "default" | null;
  basis_word: string;
  drivers: BoardDriver[];
  numbers: BoardNumber[];
  notes: string[];
  mends: BoardMend[];
}

export interface BoardDriver {
  name: string;
  swing: string;
  basis: "measured" | "told" | "guessed" | "default";
}

export interface BoardFinding {
  key: string;
  code: string;
  rule: string;
  severity: "must mend" | "advise" | "check with the standard" | "not run";
  subject: string;
  subject_id: string;
  message: string;
  cure: string;
  /** Stands by it whatever its mend; empty for most. */
  caution: string;
  mends: BoardMend[];
}

export interface BoardMend {
  text: string;
  /** None: only a person can do it. */
  operations: (PutDevice | MountDevice | TurnDevice | Tell | Add | Remove | MoveWall | LetPass)[] | null;
  /** What to beware of in doing it. */
  cautions: string[];
}

export interface BoardNumber {
  name: string;
  value: string;
  range: string;
}

export interface BoardQuestion {
  number: number;
  /** Short. */
  name: string;
  /** The whole of it. */
  asks: string;
}

export interface BoardSpan {
  low: number;
  value: number;
  high: number;
  unit: string;
}

export interface BroughtIn {
  kind: "brought-in";
  /** The job that was made; empty: none yet, since somebody must choose. */
  file: string;
  /** Premises to choose from; empty where there is nothing to choose. */
  choices: PremisesChoice[];
  name: string;
  /** How much of each kind the house has, such as `2 storeys`. */
  counts: string[];
  /** What its reader has to say; None where it was made of text. */
  report: IntakeReport | null;
  /** What does not quite fit together, and stops no answer. */
  noted: string[];
  worth_adding: string[];
}

export interface CampaignWish {
  trials: number;
}

export interface CareDate {
  /** As ISO 8601 has it. */
  on: string;
  device: string;
  name: string;
  what: string;
  is_past: boolean;
}

export interface CareList {
  /** The soonest first. */
  dates: CareDate[];
  /** Names of the devices of which nobody said when they were made, though their sheets say how long they live. */
  undated: string[];
  /** Names of the devices whose sheets say nothing of a life or of updates: that is no promise. */
  lasting: string[];
}

export interface CeilingMount {
  on: "ceiling";
  storey: string;
  at_m: [number, number];
}

export interface Changed {
  key: string;
  /** None: it is gone. */
  record: unknown | null;
}

export interface Compared {
  before: number;
  after: number;
  comparison: Comparison;
}

export interface ComparedLine {
  key: string;
  question_name: string;
  subject: string;
  course: "worse" | "new" | "not known now" | "other" | "known now" | "better" | "gone";
  course_word: string;
  before: ComparedState | null;
  after: ComparedState | null;
  /** By how much; empty where it cannot be said. */
  by: string;
  /** Whether it is more than the range that it had could have held. */
  is_beyond: boolean;
  /** Whether it is not met now and was before, or the other way round; empty: neither. */
  fails: "now" | "no more" | "";
}

export interface ComparedRule {
  course: "came" | "went" | "not checked now";
  code: string;
  severity: "must mend" | "advise" | "check with the standard" | "not run";
  subject: string;
  message: string;
}

export interface ComparedState {
  verdict: "good" | "thin" | "bad" | "unknown";
  verdict_word: string;
  value: string;
}

export interface Comparison {
  changes: ToldChange[];
  /** What grew worse first; without what reads as it did. */
  answers: ComparedLine[];
  /** How many answers read as they did; question 20 itself is not counted. */
  same: number;
  findings: ComparedRule[];
  tests: ToldRound;
}

export interface Device {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  /** As it is programmed, printed and spoken: floor, room, what. */
  name: string;
  /** The row of the catalogue that says what it is. */
  sheet: string;
  mount: WallMount | CeilingMount | OpeningMount | FreeMount;
  /** Where it looks: degrees anticlockwise from the plan's x axis; None: straight off its wall. */
  heading_deg?: number | null;
  /** Down is positive, beyond what the sheet has built in. [deg] */
  tilt_deg?: number;
  /** How a detector is set, where it can be set. */
  sensitivity?: "low" | "usual" | "high";
  /** None: not decided. */
  fixing?: Fixing | null;
  /** As its label says: its life counts from here. None: not known. */
  made_on?: string | null;
  /** Which of the cells that its sheet takes it is fitted with; None: those it comes with. */
  cell?: string | null;
  /** When its cells were last changed; None: not known, or to be fitted. */
  cells_since?: string | null;
  /** How often it is set to tell that it is there; None: as its sheet says. [min] */
  check_in_min?: number | null;
  /** For a camera inside: whether it is covered or off while people are in; None: not decided. */
  is_covered_when_home?: boolean | null;
  /** Already there and stays. */
  is_existing?: boolean;
}

export interface DifferentAnswer {
  key: string;
  title: string;
  was: string;
  today: string;
  cause: "house" | "program" | "both";
}

export interface Drawn {
  revision: number;
  /** By storey, as SVG groups. */
  storeys: Record<string, string>;
}

export interface Edit {
  /** Made by whoever sends it: sent again it changes nothing. */
  id: string;
  /** A role or a device's name, such as `tablet`. */
  author: string;
  /** The revision that was seen. */
  base: number;
  operations: (PutDevice | MountDevice | TurnDevice | Tell | Add | Remove | MoveWall | LetPass)[];
}

export interface Fault {
  what: string;
  where: string;
  cure: string;
}

export interface Firm {
  name: string;
  address?: string[];
  phone?: string;
  email?: string;
  /** Name of a picture file beside the firm's file; empty: none. */
  logo?: string;
  rates: FirmRates;
  /** None: as the row of the country says. */
  tax?: FirmTax | null;
  /** Over how many years upkeep is told. [a] */
  upkeep_years?: number;
  /** How long a quote holds; None: not told. [d] */
  valid_days?: number | null;
  /** Asked with the order; None: not told. [%] */
  deposit_percent?: string | null;
  subscription?: Subscription[];
  /** Terms in the firm's own words, in order. */
  text?: FirmText[];
}

export interface FirmRates {
  currency: string;
  /** For one fitter, before tax. */
  labour_per_hour: string;
  /** One way, beside the time; None: not told, and the catalogue's figure counts. */
  travel_per_journey?: string | null;
  /** One way; None: not told, and the catalogue's figure counts. [min] */
  travel_min?: number | null;
  /** Put on the parts' cost where the price list has no price; None: the catalogue's figure counts. [%] */
  mark_up_percent?: string | null;
  /** Screws, plugs, tape, as a share of the parts' cost; None: the catalogue's figure counts. [%] */
  consumables_percent?: string | null;
}

export interface FirmTax {
  name?: string;
  /** 0: the firm charges none. [%] */
  percent: string;
  registration?: string;
}

export interface FirmText {
  heading: string;
  text: string;
}

export interface FitLine {
  device: string;
  /** Its letters on the plan. */
  tag: string;
  name: string;
  kind: string;
  room: string;
  storey: string;
  /** Sentences: where, how it is set and held, how it is joined to the rest, how long it takes. */
  facts: string[];
  cautions: string[];
  /** What must be mended about it first: codes and messages. */
  findings: string[];
}

export interface FitStage {
  heading: string;
  /** In the order of fitting; empty: nothing is fixed in this stage. */
  devices: FitLine[];
  /** Whether its devices are fitted now; False: they were there before. */
  is_fitted: boolean;
  /** Names of the devices that the stage is about, and that are fixed in another. */
  named: string[];
}

export interface Fixing {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  by: "screws" | "adhesive";
  surface?: "plaster" | "wallpaper" | "textured" | "tile" | "upvc" | "timber" | "steel" | "aluminium" | "masonry" | "glass" | "unknown";
  /** How warm the surface is on the day of fitting; None: not measured. [deg C] */
  surface_c?: number | null;
  /** Since it was painted; None: not known. [d] */
  paint_days?: number | null;
  /** Whether a cold frame is warmed first. */
  is_heated_before?: boolean;
}

export interface Fixture {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  name: string;
  storey: string;
  kind?: "radiator" | "stove" | "boiler" | "fire" | "heater" | "vent" | "bed" | "sofa" | "table" | "chair" | "cupboard" | "shelf" | "worktop" | "appliance" | "sanitary" | "curtain" | "screen" | "mirror" | "other";
  centre_m: [number, number];
  /** Width and depth before it is turned. [m] */
  size_m: [number, number];
  /** Anticlockwise. [deg] */
  turn_deg?: number;
  /** Its underside above the floor. [m] */
  base_m?: number;
  /** From its underside to its top. [m] */
  height_m?: number;
  /** Whether it gets warm or hot, or blows warm air. */
  heat?: "none" | "warm" | "hot";
}

export interface FreeMount {
  on: "free";
  storey: string;
  at_m: [number, number];
  height_m?: number;
}

export interface GivesWay {
  device: string;
  revision: number;
  /** A sentence for each way; empty: it is bound to its place. */
  ways: string[];
}

export interface Ground {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  /** Above the house's zero. [m] */
  level_m?: number;
  /** The line of what is ours. [m] */
  boundary_m?: ([number, number])[] | null;
  road_m?: ([number, number])[] | null;
  things?: GroundThing[];
}

export interface GroundThing {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  name: string;
  /** `overhang`: eaves, a canopy, a balcony's slab: it hangs, and shades what is below. */
  kind: "wall" | "fence" | "tree" | "shed" | "flat-roof" | "bin" | "car" | "pipe" | "building" | "gate" | "overhang" | "other";
  outline_m: ([number, number])[];
  /** Its top above the ground. [m] */
  height_m: number;
  /** Its underside above the ground: for what hangs. [m] */
  base_m?: number;
  can_be_climbed?: boolean;
}

export interface HandedIn {
  id: string;
  name: string;
  size_bytes: number;
}

export interface HandedInLimits {
  /** How long a file may be, by how its name ends. [bytes] */
  largest_by_ending: Record<string, number>;
  /** [bytes] */
  largest_attachment: number;
  /** What one unit of a drawing may be. */
  units: string[];
}

export interface HistoryLine {
  number: number;
  author: string;
  at: string;
  what: string;
  undoes: number | null;
}

export interface IntakeReport {
  /** The file's name. */
  source: string;
  /** What kind of file it is, for example `IFC4`. */
  form: string;
  /** How many of each kind the site holds. */
  counts?: ([string, number])[];
  read?: string[];
  /** Grouped, with the ids: `sill heights guessed on 3 windows: w1, w2, w3`. */
  guessed?: string[];
  /** With the reason. */
  left_out?: string[];
  /** What a reader of the plan should know: rooms that share one ring of walls, walls that close only low. */
  oddities?: string[];
  /** What there is to choose from where nobody said which premises are ours; empty where there is but one. */
  premises?: PremisesChoice[];
}

export interface IntakeWish {
  /** Id of the file. */
  file: string;
  /** Id of the notes beside it. */
  notes?: string | null;
  /** None: nobody said, so that it is asked where there are several. Empty: the whole building. */
  premises?: string | null;
  unit?: "mm" | "cm" | "m" | "inch" | "foot" | null;
}

export interface JobLine {
  file: string;
  /** What the house is called; empty where the job cannot be opened. */
  name: string;
  revision: number;
  /** Why it cannot be opened; empty where it can. */
  fault: string;
}

export interface LaterSteps {
  revision: number;
  fit: FitStage[];
  /** None: there is no device to test. */
  prove: ProveRound | null;
  care: CareList;
  batteries: BatteryDay[];
}

export interface LetPass {
  do: "let-pass";
  person: string;
  part: string;
  may: "may" | "may not" | "not told";
  spaces?: string[];
  /** Where `line_m` is drawn. */
  storey?: string | null;
  /** A way through spaces that are meant as well: all that it crosses. [m] */
  line_m?: ([number, number])[];
}

export interface MountDevice {
  do: "mount-device";
  device: string;
  mount: WallMount | CeilingMount | OpeningMount | FreeMount;
  /** None: straight off its new wall, or as it was where it stands free. */
  heading_deg?: number | null;
}

export interface MoveWall {
  do: "move-wall";
  wall: string;
  /** To the left of the wall's line, looking along it. [m] */
  by_m: number;
}

export interface Needs {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  /** The security grade aimed at; None: no grade is aimed at. */
  grade?: number | null;
  /** Whether radio devices are to check in as often as the grade asks. */
  check_in_by_grade?: boolean;
  /** The edition of IEC 62676-4 whose task words cameras are held to. */
  camera_edition?: "2014" | "2025";
  accepted?: Accepted[];
}

export interface NewJob {
  file: string;
  sample?: string | null;
  document?: Record<string, unknown> | null;
}

export interface News {
  kind: "news";
  revision: number;
  author: string;
  what: string;
  changed: Changed[];
  /** How they lie on the screen now. */
  storeys: ScreenStorey[];
  /** By storey: the house drawn anew, where it changed. */
  houses: Record<string, string>;
}

export interface OfficeSaid {
  firm: Firm | null;
  prices: PricesSaid | null;
  /** A file is there that cannot be used. */
  fault: Fault | null;
}

export interface OpenEdge {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  spaces: [string, string];
  line_m: [[number, number], [number, number]];
}

export interface Opened {
  file: string;
  revision: number;
  /** The site document. */
  site: Record<string, unknown>;
  storeys: ScreenStorey[];
  /** By storey: the house without its devices, as SVG groups. */
  houses: Record<string, string>;
  /** By device: its letters on the plan. */
  tags: Record<string, string>;
  /** The inks of every drawing. */
  stylesheet: string;
  questions: BoardQuestion[];
}

export interface Opening {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  name: string;
  kind: "door" | "window" | "gap" | "rooflight" | "hatch" | "garage-door";
  wall: string;
  /** From the first end of the wall's line to the middle of the opening. [m] */
  offset_m: number;
  width_m: number;
  /** Lower edge above the storey's floor. [m] */
  sill_m?: number;
  /** Upper edge above the storey's floor. [m] */
  head_m?: number;
  /** Lower edge above the ground outside; None: from the ground's level. [m] */
  sill_outside_m?: number | null;
  leaves?: number;
  /** Where the leaf turns: the end of the opening toward the wall's first or second end, top, bottom; or it slides, or is fixed glass. With two leaves, the one that opens first. */
  hinge?: "start" | "end" | "top" | "bottom" | "sliding" | "fixed" | "none";
  /** The side of the wall's line (looking along it) that the leaf opens to. */
  swing?: "left" | "right" | "none";
  /** A row of the catalogue's glazings; None: no glass a person could come through. */
  glazing?: string | null;
  lock?: "none" | "latch" | "deadlock" | "multi-point" | "rc2" | "rc3" | "unknown";
  /** How the leaf usually stands when the house is set. */
  habit?: "shut" | "ajar" | "open";
  /** How it usually stands at night. */
  habit_night?: "shut" | "ajar" | "open";
  /** Whether it is usually locked when the house is set; only for leaves to the outside. */
  is_locked?: boolean;
  covering?: "none" | "curtain" | "blind" | "shutter";
  /** Whether the household comes in by it. */
  is_entry_door?: boolean;
  /** The spaces on the left and right of the wall's line, None being outside; left out: found from the plan. */
  joins?: [string | null, string | null] | null;
}

export interface OpeningMount {
  on: "opening";
  opening: string;
  /** Where the part with the electronics is; the magnet is on the other. */
  electronics_on?: "frame" | "leaf";
  /** Between the two parts when shut; None: not known. [m] */
  gap_m?: number | null;
}

export type Operation = PutDevice | MountDevice | TurnDevice | Tell | Add | Remove | MoveWall | LetPass;

export interface Outlet {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  name: string;
  kind: "power" | "fused-spur" | "network" | "router";
  storey: string;
  at_m: [number, number];
  height_m?: number;
}

export interface PaperClass {
  copy_class: "fitter" | "client" | "open";
  /** Whom it is for. */
  stamp: string;
  warning: string;
  papers: PaperLine[];
}

export interface PaperLine {
  name: string;
  title: string;
}

export interface PaperPage {
  width_mm: number;
  height_mm: number;
}

export interface Part {
  id: string;
  name: string;
}

export interface Pass {
  part: string;
  /** The spaces where they may be, besides the one they sleep in; none named: wherever they are not told not to. */
  may?: string[];
  /** Spaces where they are not to be: going there is a wrong turn, no ordinary trip. */
  may_not?: string[];
}

export interface Person {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  /** A role, such as `grandmother`: no surname is needed. */
  name: string;
  pace?: "slow" | "usual" | "quick";
  /** The space where they sleep. */
  bed?: string | null;
  hears_badly?: boolean;
  is_child?: boolean;
  /** Hard to wake, by drink, medicine or habit. */
  sleeps_heavily?: boolean;
  /** `visits`: a guest, a carer or a cleaner, who is there by day. */
  comes?: "lives" | "visits";
  /** Whether they can set and unset the alarm. */
  knows_code?: boolean;
  /** Where they may be while a part is set; a part not named: wherever they like. */
  passes?: Pass[];
}

export interface Pet {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  name: string;
  kind?: "cat" | "small-dog" | "big-dog" | "rabbit" | "bird" | "other";
  height_m?: number;
  mass_kg?: number;
  /** Where it may be while the house is set; none named: everywhere. */
  spaces?: string[];
}

export interface Place {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  /** ISO 3166 country code. */
  country?: string | null;
  /** Which rules and editions apply. */
  rule_pack?: "uk-eu" | "us";
  latitude_deg?: number | null;
  longitude_deg?: number | null;
  /** Where true north lies on the plan: degrees anticlockwise from the plan's y axis. None: unknown. */
  north_deg?: number | null;
  /** Name in the time zone database, such as Europe/London; None: the country's, where it has only one. */
  time_zone?: string | null;
  /** The warmest that the rooms are expected to be while set. [deg C] */
  warm_room_c?: number;
  /** The usual room temperature while set. [deg C] */
  usual_room_c?: number;
}

export interface PremisesChoice {
  /** What picks them, as the file writes it. */
  name: string;
  /** How many. [-] */
  spaces: number;
}

export interface PricesSaid {
  /** How many it has. [-] */
  rows: number;
  /** The earliest day that a row is of. */
  oldest: string | null;
}

export interface Programme {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  entry_time_s?: number;
  exit_time_s?: number;
  /** A wait between an alarm and its message, for the behaviours that ask for it. */
  abort_delay_s?: number;
  /** How long the sounders go on. */
  sounding_time_s?: number;
  /** What setting does with a window open: it is refused, or the zone is left out until the next unsetting. */
  if_open_when_setting?: "refuse" | "inhibit";
  /** How long a device may stay silent before it counts as lost; None: not decided. [min] */
  check_in_min?: number | null;
  /** Who gets messages, by role: never a name, a number or an address. */
  told?: string[];
  /** Where one stands, facing the opening, when a name says left or right. */
  left_and_right_from?: "inside" | "outside";
  /** What follows each signal in each state; what is not named follows the usual ones. */
  responses?: Response[];
}

export interface ProveRound {
  heading: string;
  begins: string;
  how: string;
  stops: ProveStop[];
  /** Detectors that no walk could be laid out for; empty: there is none. */
  missing: string;
}

export interface ProveStop {
  number: number;
  /** Empty where nobody knows. */
  storey: string;
  where: string;
  /** How long it takes on foot from the stop before. */
  walk: string;
  tests: ProveTest[];
}

export interface ProveTest {
  /** What it is known by: its kind and what it is about. */
  key: string;
  about: string;
  /** Letters on the plan of the device that it is about; empty: it is about something else. */
  tag: string;
  what: string;
  /** What is waited for before each walk; empty: nothing. */
  wait: string;
  /** What the model expects; empty: what is done says it. */
  expected: string;
  /** Empty: it is done once, as it says. */
  walks: ProveWalk[];
}

export interface ProveWalk {
  /** What it is known by: its test, how it is walked, by what, and how fast. */
  key: string;
  how: string;
  /** How fast, and how far. */
  pace: string;
  expects: "notices" | "may notice" | "stays quiet";
  /** By the model, as a sentence. */
  expected: string;
  /** Whether the design wants that; False: it is not to be so. */
  is_wanted: boolean;
}

export interface PutDevice {
  do: "put-device";
  device: Device;
}

export interface Reading {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  /** The device that was heard. */
  device: string;
  /** The device that heard it: a control unit, a repeater, a router. */
  receiver: string;
  /** As shown; the mean of a few seconds. [dB re 1 mW] */
  level_dbm: number;
  /** Where the device was held, above the house's zero; None: where it stands. [m] */
  held_at_m?: [number, number, number] | null;
}

export interface Refused {
  revision: number;
  keys: string[];
  by: string[];
  /** All that is another since the revision that the edit stood on. */
  changed: Changed[];
}

export interface Remove {
  do: "remove";
  of: string;
  id: string;
}

export interface Response {
  signal: "intruder" | "tamper" | "hold-up" | "fire" | "water" | "fault";
  state: "unset" | "part set" | "set";
  sounders?: "none" | "inside" | "all";
  /** Whether a message leaves the house. */
  message?: boolean;
  /** Who gets the message, by role; none named: those whom the programme tells. */
  told?: string[];
}

export interface ResultWish {
  /** Names it: sent again it changes nothing. */
  id: string;
  step: "fit" | "prove";
  /** Id of the device, or what the test is known by. */
  key: string;
  outcome: "done" | "passed" | "not passed" | "not done";
  /** Of the house that was seen. */
  revision: number;
  author: string;
  reading?: string;
  remark?: string;
  /** Number of what was seen to be written down of it last; 0: nothing was. */
  seen?: number;
}

export interface ScreenStorey {
  storey: string;
  name: string;
  /** Lowest x, lowest y, highest x, highest y. [m] */
  bounds: [number, number, number, number];
  mm_per_m: number;
}

export interface SentIn {
  kind: "sent-in";
  /** Of the house that they were sent into. */
  revision: number;
  trials: number;
  parts: SentInPart[];
  /** By storey: the ways on which the design loses, as SVG groups. */
  lost: Record<string, string>;
  /** By storey: the least-detected paths, as SVG groups. */
  least: Record<string, string>;
}

export interface SentInPart {
  heading: string;
  text: string[];
  points: string[];
  /** Of the table; empty: there is none. */
  headings: string[];
  rows: string[][];
  /** As SVG; empty: there is none. */
  drawing: string;
}

export interface Show {
  kind: "show";
  key: string | null;
}

export interface ShownLine {
  what: string;
  count: string;
  amount: string;
}

export interface ShownOption {
  name: string;
  changes: string[];
  lines: ShownLine[];
  /** Before tax, the tax, in all. */
  sums: ShownLine[];
  /** What is looked at first: with tax where that is known. */
  total: string;
  /** With its range; empty: not known. */
  price: string;
  hours: string;
  /** To the first option; empty for that. */
  difference: string;
  not_priced: string[];
}

export interface ShownQuote {
  house: string;
  /** The firm; empty: made-up rates. */
  by: string;
  options: ShownOption[];
  /** Over how many years, and what in all; empty: not known. */
  upkeep: string;
  upkeep_lines: ShownLine[];
  notes: string[];
}

export interface SignedLine {
  kind: "signed";
  number: number;
  revision: number;
  at: string;
  author: string;
  what: string;
  program: string;
  /** How many were signed. [-] */
  answers: number;
  findings: number;
  /** Whether the house is still as it was signed. */
  is_same_house: boolean;
  /** Whether the same version of the program and the same rows of data are at work. */
  is_same_program: boolean;
}

export interface SigningWish {
  revision: number;
  author: string;
  what?: string;
}

export interface SinceSigned {
  kind: "since-signed";
  number: number;
  /** How many answers and findings are as they were signed. [-] */
  same: number;
  answers: DifferentAnswer[];
  findings: DifferentAnswer[];
  /** What is another about the house. */
  house: ToldChange[];
  /** What is another about the program and its data. */
  program: string[];
  tests: ToldRound;
}

export interface Site {
  schema_version: 1;
  name: string;
  place?: Place;
  ground?: Ground;
  storeys: Storey[];
  spaces?: Space[];
  walls?: Wall[];
  openings?: Opening[];
  open_edges?: OpenEdge[];
  stairs?: Stair[];
  fixtures?: Fixture[];
  outlets?: Outlet[];
  people?: Person[];
  pets?: Pet[];
  targets?: Target[];
  devices?: Device[];
  zones?: Zone[];
  parts?: Part[];
  behaviours?: Behaviour[];
  programme?: Programme;
  needs?: Needs;
  readings?: Reading[];
}

export interface SiteResult {
  number: number;
  step: "fit" | "prove";
  /** Id of the device that is fitted, or what the test is known by. */
  key: string;
  outcome: "done" | "passed" | "not passed" | "not done";
  /** As it was read, with its unit; empty: nothing was read. */
  reading: string;
  remark: string;
  /** Of the house that it was fitted or tested by. [-] */
  revision: number;
  author: string;
  /** When, by the clock of the machine that keeps the job (UTC, ISO 8601). */
  at: string;
  /** What is another since, so that it is of an earlier revision; empty: it holds for the house as it is. */
  earlier: string;
}

export interface Slope {
  /** Corners of the underside: plan x, plan y, height above the storey's floor. They lie in one plane. [m] */
  corners_m: ([number, number, number])[];
}

export interface Space {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  name: string;
  storey: string;
  /** Inner faces of its walls. [m] */
  outline_m: ([number, number])[];
  use?: "hall" | "landing" | "stairwell" | "living" | "dining" | "kitchen" | "bedroom" | "study" | "bathroom" | "toilet" | "utility" | "store" | "garage" | "loft" | "conservatory" | "balcony" | "terrace" | "plant" | "other";
  /** Whose it is: the premises are the spaces that are ours. */
  belongs?: "ours" | "neighbour" | "shared";
  /** Floor to ceiling where it differs from the storey's. [m] */
  height_m?: number | null;
  /** Whether its floor is so smooth that it throws the sun on: polished stone, lacquer. */
  has_glossy_floor?: boolean;
}

export interface Stair {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  name?: string;
  /** The storey it starts from. */
  lower: string;
  /** The storey it leads to. */
  upper: string;
  /** Its walking line on the plan from the lowest riser to the highest. [m] */
  line_m: ([number, number])[];
  width_m?: number;
  /** The hole it leaves in the upper floor; None: the walking line at its width. [m] */
  well_m?: ([number, number])[] | null;
  /** What guards the well above: open balusters can be looked through, in part. */
  balusters?: "open" | "solid" | "none";
  /** Whether the space below the flight is boxed in. */
  is_enclosed?: boolean;
}

export interface Storey {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  name: string;
  /** Height of the finished floor above the house's zero. [m] */
  elevation_m: number;
  /** Floor to ceiling, where no slope is lower. [m] */
  height_m?: number;
  /** Sloped ceilings; the lowest plane over a place counts. */
  slopes?: Slope[];
}

export interface Subscription {
  name: string;
  /** Before tax. */
  per_year: string;
  /** Device sheets that need it; none named: every job has it. */
  sheets?: string[];
}

export interface Taken {
  revision: number;
  changed: Changed[];
}

export interface Target {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  name: string;
  space: string;
  /** Where in the space; None: anywhere in it, so its nearest point. [m] */
  at_m?: [number, number] | null;
  worth?: "low" | "medium" | "high";
}

export interface Tell {
  do: "tell";
  /** The list, such as `openings`, or `place`, `ground`, `programme`, `needs`, `name`. */
  of: string;
  id?: string | null;
  facts: Record<string, unknown>;
  basis?: "measured" | "told" | "guessed" | "default";
}

export interface ToldChange {
  thing: string;
  /** The kind of thing; empty where there is only one. */
  of: string;
  course: "new" | "gone" | "changed";
  /** What is another, piece by piece; empty where it is new or gone. */
  what: string[];
}

export interface ToldRound {
  /** How many tests, how long, in one sentence. */
  heading: string;
  begins_at: string;
  /** How long it takes from the last stop back to the beginning. */
  back: string;
  /** How good the order is. */
  order: string;
  stops: ToldStop[];
}

export interface ToldStop {
  number: number;
  /** Storey. */
  where: string;
  /** How long it takes from the stop before. */
  walk: string;
  tests: ToldTest[];
}

export interface ToldTest {
  /** What to do, and of what. */
  what: string;
  why: string;
}

export interface Try {
  kind: "try";
  number: number;
  operations: (PutDevice | MountDevice | TurnDevice | Tell | Add | Remove | MoveWall | LetPass)[];
}

export interface TurnDevice {
  do: "turn-device";
  device: string;
  heading_deg: number;
  tilt_deg?: number | null;
}

export interface UndoWish {
  id: string;
  author: string;
  /** The revision that was seen: what changed since comes back. */
  base: number;
}

export interface WalkLine {
  storey: string;
  /** On the plan. [m] */
  points: ([number, number])[];
  /** When it is there, in the likely case. [s] */
  times_s: number[];
}

export interface Wall {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  storey: string;
  /** Its centre line; openings and devices are measured from the first end. [m] */
  line_m: [[number, number], [number, number]];
  thickness_m?: number;
  /** Its foot above the storey's floor. [m] */
  base_m?: number;
  /** Its own height; None: up to the ceiling. [m] */
  height_m?: number | null;
  /** Its outline on the plan where that is not the plain rectangle about its line. [m] */
  footprint_m?: ([number, number])[] | null;
  /** A row of the catalogue's constructions. */
  construction?: string;
  /** Whether it parts inside from outside; None: from the spaces on its two sides. */
  is_exterior?: boolean | null;
}

export interface WallMount {
  on: "wall";
  wall: string;
  /** The face on the left or right of the wall's line, looking along it. */
  side: "left" | "right";
  /** From the first end of the wall's line. [m] */
  offset_m: number;
  /** Its middle above the storey's floor. [m] */
  height_m: number;
}

export interface WorkNews {
  kind: "work";
  id: string;
  what: string;
  /** The job that it is about; empty: none yet. */
  job: string;
  state: "waiting" | "running" | "done" | "stopped" | "failed";
  /** What it is doing. */
  step: string;
  /** How many steps were begun. [-] */
  begun: number;
  /** How many there are likely to be. [-] */
  of: number;
  /** Since it was asked for. [s] */
  seconds: number;
  /** Whether it was told to stop, and has not yet. */
  is_stopping: boolean;
  fault: Fault | null;
  result: BroughtIn | SignedLine | SinceSigned | SentIn | null;
}

export interface Zone {
  /** How each field is known. */
  basis?: Record<string, "measured" | "told" | "guessed" | "default">;
  id: string;
  number: number;
  name: string;
  devices: string[];
  behaviour: string;
  /** The parts in which it is active. */
  parts?: string[];
  /** How it behaves in every part but the full one, where that differs: such as entry/exit for what is passed on the way down to the keypad in the morning. None: as always. */
  behaviour_part_set?: string | null;
  /** Zones of different groups confirm each other; None: it is not counted for that. */
  group?: string | null;
  /** It is only written to the log until it has proved itself. */
  is_on_soak?: boolean;
  /** How many alarms it may give in one setting; None: no limit. */
  limit?: number | null;
}
