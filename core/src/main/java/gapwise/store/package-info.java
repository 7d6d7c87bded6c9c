/**
 * Versioned JSON documents in one database: kept for good, with who, when and why; one change log
 * over all; the only SQL of the program.
 *
 * <p>Start at {@link gapwise.store.DocumentStore}; copies out and back are {@link
 * gapwise.store.Backup} and {@link gapwise.store.Restore}. What a document means, and who may write
 * which, is settled by those who call. The statements are plain SQL that the embedded file and a
 * PostgreSQL server both answer; what they do differently is the room {@code store.database}.
 * Opening a home with its own file is {@code HomeOpening}, one with a database of a server {@code
 * ServerOpening}.
 */
package gapwise.store;
