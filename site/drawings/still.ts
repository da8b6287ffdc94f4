import { Component } from 'preact';

/** A part of a page that is drawn anew only where one of its values is another. */
export abstract class Still<Values extends object> extends Component<Values> {
  override shouldComponentUpdate(next: Values): boolean {
    return (Object.keys(next) as (keyof Values)[]).some((key) => next[key] !== this.props[key]);
  }
}
