/**
 * How often tests of true hypotheses reject them, by simulation; the tables stand in
 * docs/methods/error-rates.md.
 */
package gapwise.errorrate;
