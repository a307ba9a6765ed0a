/** host.ts for the compiler to WebAssembly; no other sees this file. */
import type { Index } from './memory.ts';

@external("host", "opening")
export declare function hostOpening(which: Index): void;
@external("host", "flow")
export declare function hostFlow(passage: Index): void;
@external("host", "drag")
export declare function hostDrag(cylinder: Index): void;
@external("host", "load")
export declare function hostLoad(): void;
@external("host", "wallHeat")
export declare function hostWallHeat(): void;
@external("host", "slopes")
export declare function hostSlopes(x: number, state: Index, slopes: Index): void;
@external("host", "look")
export declare function hostLook(x: number, length: number): Index;
@external("host", "attempt")
export declare function hostAttempt(length: number): number;
@external("host", "lengthToChange")
export declare function hostLengthToChange(): number;
@external("host", "show")
export declare function hostShow(): Index;
