/** An event over time after each method, from published curves. Start at {@code CoursePage}. */
package gapwise.server.page.course;
