/** A pair that a post allows: two tooth counts, and the wheels that must be got for it, by number. */
export interface PairChoice {
  readonly driver: number;
  readonly driven: number;
  readonly newWheels: readonly number[];
}

/** One choice for each of some posts. Products beyond 2^53 are rounded. */
export interface Combination {
  readonly num: number;
  readonly den: number;
  readonly teeth: number;
  /** How many different wheels must be got */
  readonly newWheels: number;
  readonly picks: readonly number[];
}

/** All combinations of some posts, by rising ratio. */
export interface HalfList {
  /** Driven over drivers, or drivers over driven where the inverse was asked for */
  readonly values: Float64Array;
  readonly rows: readonly Combination[];
}

/** Lists all combinations of one choice for each post, sorted by their ratio or by its inverse. */
export function listHalf(
  posts: readonly (readonly PairChoice[])[],
  isAlike: boolean,
  isInverse: boolean,
): HalfList {
  const ratioOf = ({ num, den }: Combination): number => (isInverse ? den / num : num / den);
  const rows = [...eachCombination(posts, isAlike)].sort((a, b) => ratioOf(a) - ratioOf(b));
  const values = new Float64Array(rows.length);
  for (let k = 0; k < rows.length; k++) values[k] = ratioOf(rows[k]);
  return { values, rows };
}

/** Every combination of one choice for each post; of posts that are alike each once. Of no posts there is one. */
export function* eachCombination(
  posts: readonly (readonly PairChoice[])[],
  isAlike: boolean,
): Generator<Combination, void, unknown> {
  const picks = posts.map(() => 0);
  if (posts.some(({ length }) => length === 0)) return;
  for (;;) {
    yield combine(posts, picks);
    let post = posts.length - 1;
    while (post >= 0 && picks[post] === posts[post].length - 1) post--;
    if (post < 0) return;
    picks[post]++;
    for (let k = post + 1; k < picks.length; k++) picks[k] = isAlike ? picks[post] : 0;
  }
}

function combine(posts: readonly (readonly PairChoice[])[], picks: readonly number[]): Combination {
  let num = 1;
  let den = 1;
  let teeth = 0;
  const wheels: number[] = [];
  for (let post = 0; post < posts.length; post++) {
    const { driver, driven, newWheels } = posts[post][picks[post]];
    num *= driven;
    den *= driver;
    teeth += driver + driven;
    for (const wheel of newWheels) if (!wheels.includes(wheel)) wheels.push(wheel);
  }
  return { num, den, teeth, newWheels: wheels.length, picks: [...picks] };
}
