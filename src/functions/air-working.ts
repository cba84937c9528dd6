import type { Line } from '../core/define.ts';

/** Lines of working that several functions of drying air share. */

export const ashrae = { source: 'ashrae-2017' } as const;

export const outdoorWorking = {
  pressure_pa: {
    says: 'Pressure of the air at that altitude',
    unit: 'Pa',
    how: '101325 * (1 - 2.25577e-5 * altitude_m) ** 5.2559',
    ...ashrae,
  },
  humidity_ratio: {
    says: 'Water in the air, per kg of dry air',
    unit: 'kg/kg',
    how: 'humidityRatio(ambient_c, ambient_rh, pressure_pa)',
    ...ashrae,
  },
} as const satisfies Record<string, Line>;

export const measuredWorking = {
  measured_c: { says: 'Temperature where the flow is measured', unit: '°C', how: "air_at == 'supply' ? supply_c : ambient_c" },
} as const satisfies Record<string, Line>;

export const flowWorking = {
  ...outdoorWorking,
  ...measuredWorking,
  air_kg_h: { says: 'Dry air', unit: 'kg/h', how: 'air_m3_h / specificVolume(measured_c, humidity_ratio, pressure_pa)', ...ashrae },
} as const satisfies Record<string, Line>;

export const airCapacityWorking = {
  air_kj_h_k: { says: 'Heat to warm the air by one degree', unit: 'kJ/h·K', how: 'air_kg_h * (1.006 + 1.86 * humidity_ratio)', ...ashrae },
} as const satisfies Record<string, Line>;

export const heatWorking = {
  heat_kw: {
    says: 'Heat into the air',
    unit: 'kW',
    how: 'air_kg_h * (enthalpy(supply_c, humidity_ratio) - enthalpy(ambient_c, humidity_ratio)) / 3600',
    ...ashrae,
  },
} as const satisfies Record<string, Line>;
