import { type ReactNode, useId } from 'react';

/** One of a few, as radio buttons with a place to touch of 48 px each. */
export function KitChoice<Key extends string>(props: {
  readonly label: string;
  readonly chosen: Key | undefined;
  readonly choices: readonly { readonly key: Key; readonly word: string }[];
  readonly onChoose: (key: Key) => void;
}): ReactNode {
  const { label, chosen, choices, onChoose } = props;
  const id = useId();
  return (
    <fieldset className="kit-choice">
      <legend>{label}</legend>
      {choices.map(({ key, word }) => (
        <label key={key}>
          <input type="radio" name={id} checked={key === chosen} onChange={() => onChoose(key)} />
          <span>{word}</span>
        </label>
      ))}
    </fieldset>
  );
}
