import { inUse } from './inputs.ts';

/** Arguments that the drying functions share, as cells of Inputs. */
export const dms = inUse('Pressed dry matter', 'Dried to dry matter');
export const pressed = inUse('Slurry dry matter', 'Pressed dry matter', 'Share of dry matter caught');
export const air = inUse('Air m3 per hour');
export const airState = inUse('Altitude', 'Air measured at');
export const dryerState = inUse('Exhaust humidity', 'Heat loss');
export const outdoor = inUse('Outdoor temperature', 'Outdoor humidity');
