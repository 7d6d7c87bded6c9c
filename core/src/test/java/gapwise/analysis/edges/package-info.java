/**
 * What plans must say at the edge of what data can tell, a class for each kind: counts at a limit,
 * spreads that few studies cannot tell, intervals narrower than the evidence, tests that few
 * studies do not bear, studies given twice. Numbers by core/src/test/reference/edges.py where no
 * source stands beside them.
 */
package gapwise.analysis.edges;
