/** Something that a person chose, dropped, read or was sent, and that cannot be taken. Nothing was changed then. */
export class FileRefused extends Error {}
