/**
 * Drills: the built program is killed, or sent made-up requests, and what is left is compared with
 * what was promised. docs/reliability.md gives the commands and their figures. Start at {@link
 * gapwise.drill.KillDrill} and {@link gapwise.drill.RequestDrill}.
 */
package gapwise.drill;
