/**
 * What becomes of many in steps: boxes one below another, and beside each what leaves there. Start
 * at {@link gapwise.figure.flow.FlowChart}.
 */
package gapwise.figure.flow;
