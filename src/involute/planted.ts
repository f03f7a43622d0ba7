import { judge } from '../readings/judge.ts';
export const planted = judge;
