/**
 * Work that outlasts a request: imports of filled templates, one at a time, with their progress.
 * Start at {@link gapwise.server.job.ImportJobs}.
 */
package gapwise.server.job;
