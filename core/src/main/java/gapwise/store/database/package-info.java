/**
 * The two kinds of database that records can be in: an SQLite file in the home, or a PostgreSQL
 * server. Here stands what they do differently: connecting, taking turns, reading one moment, the
 * layout and its migrations, the words of their failures. What records are, and how they are
 * written and read, is the room {@code store}.
 *
 * <p>Start at {@link gapwise.store.database.Database}. Migrations are scripts by database below
 * {@code resources/gapwise/store/migration}, those of {@code any} for both; the third of the file
 * is {@code ContentChecksumMigration}.
 */
package gapwise.store.database;
