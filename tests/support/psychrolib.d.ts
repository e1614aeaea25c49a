/** The part of psychrolib (plain JavaScript) that the tests use. */
declare module 'psychrolib' {
  const psychrolib: {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    /** Pa, from °C; over water above 0.01 °C. */
    GetSatVapPres(temperature: number): number;
    /** °C; relative humidity from 0 to 1. Below 0.01 °C the frost point. */
    GetTDewPointFromRelHum(temperature: number, humidity: number): number;
  };
  export = psychrolib;
}
