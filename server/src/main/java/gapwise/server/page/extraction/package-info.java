/**
 * Papers that two people extract apart: opened, settled field by field, and what differed ever
 * after. Start at {@link gapwise.server.page.extraction.ExtractionPage}.
 */
package gapwise.server.page.extraction;
