/** Published trials and plain settings that the tests of several rooms of the synthesis pool. */
package gapwise.synthesis.testing;
