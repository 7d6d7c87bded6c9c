/**
 * The one way by which filled templates come into an evidence base, whichever door they come to:
 * read, compared with all that stands there, asked about once, stored whole or not at all.
 *
 * <p>Start at {@link gapwise.intake.Intake}. How a template is read lives in {@code exchange}, the
 * rules in {@code evidence.check}, storing in {@code curation}.
 */
package gapwise.intake;
