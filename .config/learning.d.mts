export declare function codeName(files: readonly string[], root: string): Promise<string>;
export declare function learningDefines(): Promise<Record<string, string>>;
