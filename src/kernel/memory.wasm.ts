/** memory.ts for the compiler to WebAssembly; no other sees this file. */
export type Index = i32;

// @ts-ignore: decorators of functions
@inline
export function at(from: Index, offset: Index): number {
  return load<f64>(<usize>((from + offset) << 3));
}

// @ts-ignore
@inline
export function put(from: Index, offset: Index, value: number): void {
  store<f64>(<usize>((from + offset) << 3), value);
}

// @ts-ignore
@inline
export function intAt(from: Index, offset: Index): Index {
  return load<i32>(<usize>((from + offset) << 3));
}

// @ts-ignore
@inline
export function putInt(from: Index, offset: Index, value: Index): void {
  store<i32>(<usize>((from + offset) << 3), value);
}

// @ts-ignore
@inline
export function toIndex(value: number): Index {
  return <i32>value;
}

// @ts-ignore
@inline
export function exponentOf(value: number): Index {
  return <i32>(reinterpret<u64>(value) >> 52) - 1023;
}
