package gapwise.server;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.spi.ILoggingEvent;
import ch.qos.logback.classic.spi.LoggingEvent;
import ch.qos.logback.core.ConsoleAppender;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.slf4j.LoggerFactory;

/** What the log of the server looks like: its own configuration is in force in these tests. */
class LogTest {
  private static final Instant WHEN = Instant.parse("2026-03-01T23:04:05Z");

  @Test
  void whatAPersonSentCannotBeginALineOfItsOwn() {
    String line =
        logged("import of {} failed", "a.csv\r\n2026-03-01T23:04:06Z ERROR forged\u2028x");

    assertEquals(1, line.lines().count(), line);
    assertTrue(line.contains("a.csv  2026-03-01T23:04:06Z ERROR forged x failed"), line);
  }

  @Test
  void timesAreWorldTimesWithTheirDate() {
    String line = logged("something happened");

    assertEquals("2026-03-01T23:04:05Z WARN  LogTest: something happened", line.stripTrailing());
  }

  private static String logged(String message, Object... arguments) {
    Logger root = assertInstanceOf(Logger.class, LoggerFactory.getLogger(Logger.ROOT_LOGGER_NAME));
    ConsoleAppender<ILoggingEvent> console =
        (ConsoleAppender<ILoggingEvent>) root.getAppender("people");
    Logger ours = root.getLoggerContext().getLogger(LogTest.class);
    LoggingEvent event =
        new LoggingEvent(LogTest.class.getName(), ours, Level.WARN, message, null, arguments);
    event.setInstant(WHEN);
    return new String(console.getEncoder().encode(event), StandardCharsets.UTF_8);
  }
}
