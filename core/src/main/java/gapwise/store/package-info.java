/**
 * Versioned JSON documents in one SQLite file: kept for good, with who, when and why; one change
 * log over all; the only SQL of the program.
 *
 * <p>Start at {@link gapwise.store.DocumentStore}; copies out and back are {@link
 * gapwise.store.Backup} and {@link gapwise.store.Restore}. What a document means, and who may write
 * which, is settled by those who call. The statements are plain SQL but for the triggers of the
 * second migration, what looks at the file as such, and the settings in {@code Database}, so that a
 * server database can take the file's place. The first two migrations are scripts beside the
 * classes, the third is {@code ContentChecksumMigration}.
 */
package gapwise.store;
