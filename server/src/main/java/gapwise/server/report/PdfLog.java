package gapwise.server.report;

import com.openhtmltopdf.util.Diagnostic;
import com.openhtmltopdf.util.XRLogger;
import java.util.logging.Level;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What the setter of PDFs tells, in the log of the program; for those who look for it, since a
 * browser's rules of style that it does not know are no fault.
 */
final class PdfLog implements XRLogger {
  private static final Logger LOG = LoggerFactory.getLogger(PdfLog.class);

  @Override
  public void log(String where, Level level, String message) {
    LOG.debug("{}: {}", where, message);
  }

  @Override
  public void log(String where, Level level, String message, Throwable failure) {
    LOG.warn("{}: {}", where, message, failure);
  }

  @Override
  public void setLevel(String logger, Level level) {}

  @Override
  public boolean isLogLevelEnabled(Diagnostic diagnostic) {
    return diagnostic.getLevel().intValue() >= Level.WARNING.intValue();
  }
}
