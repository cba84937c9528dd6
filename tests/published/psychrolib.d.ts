/** What our tests use of psychrolib 1.1.1, which ships no types. */
declare module 'psychrolib' {
  interface Psychrometrics {
    readonly SI: number;
    SetUnitSystem(unit_system: number): void;
    GetStandardAtmPressure(altitude_m: number): number;
    GetHumRatioFromRelHum(t_c: number, rh: number, pressure_pa: number): number;
    GetRelHumFromHumRatio(t_c: number, humidity_ratio: number, pressure_pa: number): number;
    /** J/kg, where ours is kJ/kg. */
    GetMoistAirEnthalpy(t_c: number, humidity_ratio: number): number;
    GetMoistAirVolume(t_c: number, humidity_ratio: number, pressure_pa: number): number;
    /** Slope of the logarithm of the saturation pressure, per K. */
    dLnPws_(t_c: number): number;
    GetTDewPointFromRelHum(t_c: number, rh: number): number;
    GetTWetBulbFromRelHum(t_c: number, rh: number, pressure_pa: number): number;
  }
  const library: Psychrometrics;
  export default library;
}
