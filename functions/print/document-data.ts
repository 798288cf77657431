const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;" };
// XML 1.0 section 2.2 lets none of these stand in a document, not even escaped.
const unwritable = /(?![\t\n\r])\p{Cc}|\p{Cs}|[\ufffe\uffff]/gu;
const escaped = (text: string): string => text.replace(unwritable, "\ufffd").replace(/[&<>]/g, (sign) => entities[sign] as string);

/** The PDF's XMP packet (ISO 16684-1): the same title, language and date as its information dictionary. */
export const documentData = (title: string, language: string, at: Date): string => {
  const date = `${at.toISOString().slice(0, 19)}Z`;
  return `<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#"><rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/">
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">${escaped(title)}</rdf:li></rdf:Alt></dc:title><dc:language><rdf:Bag><rdf:li>${escaped(language)}</rdf:li></rdf:Bag></dc:language>
<xmp:CreateDate>${date}</xmp:CreateDate><xmp:ModifyDate>${date}</xmp:ModifyDate><xmp:CreatorTool>Asburied</xmp:CreatorTool><pdf:Producer>Asburied</pdf:Producer>
</rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="r"?>`;
};
