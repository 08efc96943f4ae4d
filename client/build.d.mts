export function buildPage(target?: string): Promise<void>;
export function buildExtension(): Promise<void>;
export const shipped: readonly string[];
