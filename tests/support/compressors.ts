/** Compressors for tests. */
import { compressorParameters, type Compressor } from '../../src/parts/compressor.ts';
import { filled } from './chosen.ts';

type Given = Pick<Compressor, 'free_air_delivery' | 'receiver_volume' | 'cut_in' | 'cut_out'> &
  Partial<Compressor>;

/** With the defaults of a description. */
export const compressorWith = (given: Given): Compressor =>
  filled(compressorParameters, given) as unknown as Compressor;

/** One that delivers the same at every pressure, as the closed forms of the literature have it. */
export const steadyCompressor = (given: Given): Compressor => compressorWith({ ...given, clearance: 0 });
