/** The sheet that patient and team read together: chosen, shown, taken along. */
package gapwise.server.page.sheet;
