import { Button, type ButtonProps } from 'react-aria-components';
import style from './PlainButton.module.css';

/** A button in one of three weights: `strong` for the one thing to do next, `plain`, and `quiet` inside text. */
export function PlainButton({
  weight = 'plain',
  ...props
}: Omit<ButtonProps, 'className' | 'style'> & { readonly weight?: 'strong' | 'plain' | 'quiet' }) {
  return <Button {...props} className={`${style.button} ${style[weight]}`} />;
}
