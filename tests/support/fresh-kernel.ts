/** Before any test: none may run a kernel older than its sources. */
import { buildKernel } from '../../.config/scripts/kernel.mjs';

export async function setup(): Promise<void> {
  await buildKernel();
}
