/** host.ts for the compiler to WebAssembly; no other sees this file. */
import type { Index } from './memory.ts';

@external("host", "opening")
export declare function hostOpening(which: Index, angle: number, speed: number): number;
@external("host", "flow")
export declare function hostFlow(passage: Index, angle: number, pFrom: number, t: number, pTo: number, speed: number): number;
@external("host", "drag")
export declare function hostDrag(cylinder: Index, angle: number, speed: number, chest: number, cylinderPressure: number, otherEnd: number): number;
@external("host", "load")
export declare function hostLoad(speed: number): number;
@external("host", "wallHeat")
export declare function hostWallHeat(area: number, temperature: number, pressure: number, speed: number): number;
@external("host", "slopes")
export declare function hostSlopes(x: number, state: Index, slopes: Index): void;
