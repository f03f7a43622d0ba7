import './entry.css';
import { type ReactNode, useId } from 'react';

/** One of a few, in words. */
export function Choice<Value extends string>(props: {
  readonly legend: string;
  readonly options: readonly { readonly value: Value; readonly words: string }[];
  readonly chosen: Value;
  readonly onChoose: (value: Value) => void;
}): ReactNode {
  const name = useId();
  return (
    <fieldset>
      <legend>{props.legend}</legend>
      <div className="entry-choice">
        {props.options.map(({ value, words }) => (
          <label key={value}>
            <input
              type="radio"
              name={name}
              checked={value === props.chosen}
              onChange={() => props.onChoose(value)}
            />
            {words}
          </label>
        ))}
      </div>
    </fieldset>
  );
}
