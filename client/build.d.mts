export function buildPage(target?: string): Promise<void>;
export function buildExtension(): Promise<void>;
