/** One field of a form: text, or a file. */
export type FormPart =
  | { readonly name: string; readonly text: string }
  | { readonly name: string; readonly file: File; readonly bytes: Uint8Array };

/**
 * Reads a multipart form as RFC 7578 writes them. Node's own reader refuses the framework's forms, whose field names
 * stand in small letters and whose file names have no quotes (the real server takes both).
 */
export function readMultipart(body: Buffer, contentType: string): FormPart[] {
  const boundary = /boundary=(?:"([^"]+)"|([^;]+))/.exec(contentType);
  const mark = Buffer.from(`--${boundary?.[1] ?? boundary?.[2] ?? ''}`);
  const parts: FormPart[] = [];
  let from = body.indexOf(mark);
  while (from >= 0) {
    const next = body.indexOf(mark, from + mark.length);
    if (next < 0) break;
    parts.push(readPart(body.subarray(from + mark.length + 2, next - 2)));
    from = next;
  }
  return parts;
}

function readPart(part: Buffer): FormPart {
  const end = part.indexOf('\r\n\r\n');
  const head = part.subarray(0, end).toString('utf8');
  const content = part.subarray(end + 4);
  const name = /\bname="?([^";\r\n]+)/i.exec(head)?.[1] ?? '';
  const fileName = /\bfilename="?([^";\r\n]+)/i.exec(head)?.[1];
  if (fileName === undefined) return { name, text: content.toString('utf8') };
  const bytes = new Uint8Array(content);
  return { name, bytes, file: new File([bytes], fileName) };
}
