export declare function codeName(file: string, root: string): Promise<string>;
export declare function learningDefines(): Promise<Record<string, string>>;
