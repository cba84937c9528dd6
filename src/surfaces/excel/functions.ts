/// <reference types="webpack/module" />
import { registry } from '../../functions/index.ts';
import { register } from './register.ts';

register(registry);

/** For the embedded sheet's page, whose panel and workbook are made from the same records: see `fromFunctions` in webpack.config.js. */
export const modules = import.meta.webpackContext('../..', { regExp: /^\.\/(core|functions|domain)\/.+\.ts$/ });
