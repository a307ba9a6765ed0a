/** From SI to the units of the CSV headers. */
export const same = (value: number): number => value;
export const inDegrees = (angle: number): number => (angle * 180) / Math.PI;
export const inRpm = (speed: number): number => (speed * 30) / Math.PI;
export const inBar = (pressure: number): number => pressure / 1e5;
export const inCelsius = (temperature: number): number => temperature - 273.15;
export const inCubicCentimetres = (volume: number): number => volume * 1e6;
export const inSquareMillimetres = (area: number): number => area * 1e6;
export const inGramsPerSecond = (flow: number): number => flow * 1e3;
