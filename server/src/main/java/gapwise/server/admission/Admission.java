package gapwise.server.admission;

import gapwise.budget.Work;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.router.Endpoint;
import java.nio.file.Path;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.Server;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Stands before every route: a request is taken in whole, waits its turn where it is costly, and is
 * computed within its budget for as long as somebody waits for it.
 */
public final class Admission implements AutoCloseable {
  /** Largest upload: an extraction workbook of 100,000 rows is about a tenth of it. */
  public static final long LARGEST_UPLOAD_BYTES = 128L * 1024 * 1024;

  /** Largest of everything else, above all of plans, which are held in memory. */
  public static final long LARGEST_BODY_BYTES = 8L * 1024 * 1024;

  private static final Logger LOG = LoggerFactory.getLogger(Admission.class);

  private static final String BUSY =
      "The server is computing for others just now, and this could not be begun. Nothing was"
          + " changed; try again in a moment. Pages of studies are open meanwhile.";
  private static final String MEMORY =
      "This needs more memory than the server has free. Nothing was changed. Ask for less (fewer"
          + " rows, draws or variants), or try again later.";
  private static final int MEMORY_SECONDS = 30;

  private final Bounds bounds;
  private final Spool spool;
  private final Refusals refusals;
  private final Departures departures = new Departures();
  private final Map<Lane, Seats> seats;

  /**
   * @param folder where large bodies lie while they come in; it is there, and its owner's alone
   * @param refusals writes why a request is not taken
   */
  public Admission(Bounds bounds, Path folder, Refusals refusals) {
    this.bounds = bounds;
    this.spool = new Spool(folder, bounds.spoolBytes());
    this.refusals = refusals;
    Map<Lane, Seats> byLane = new EnumMap<>(Lane.class);
    for (Lane lane : Lane.values()) {
      byLane.put(lane, new Seats(bounds.computing(), lane.queue()));
    }
    this.seats = Collections.unmodifiableMap(byLane);
  }

  /**
   * Makes a web server ask here first.
   *
   * @param host address to listen on
   * @param port port to listen on; 0 takes a free one
   */
  public void addTo(JavalinConfig config, String host, int port) {
    config.jetty.addConnector((server, http) -> connector(server, http, host, port));
    config.jetty.modifyServer(this::prepare);
    config.router.handlerWrapper(this::admitted);
  }

  private WatchedConnector connector(Server server, HttpConfiguration http, String host, int port) {
    // A buffer that is used once is taken from the heap: memory outside it is dear to take and late
    // to be given back.
    http.setUseInputDirectByteBuffers(false);
    http.setUseOutputDirectByteBuffers(false);
    WatchedConnector connector = new WatchedConnector(server, http, bounds);
    connector.setHost(host);
    connector.setPort(port);
    return connector;
  }

  private void prepare(Server server) {
    server.insertHandler(new AnswerAhead(bounds.answerBytes()));
    server.insertHandler(new BodyFirst(bounds, spool, refusals));
  }

  private Handler admitted(Endpoint endpoint) {
    if (!endpoint.method.isHttpMethod()) {
      return endpoint.handler;
    }
    Lane lane = Lane.of(endpoint.method.name(), endpoint.path);
    return lane == Lane.FREE
        ? context -> within(Work.within(bounds.budget()), endpoint.handler, context)
        : context -> watched(lane, endpoint.handler, context);
  }

  private Seats of(Lane lane) {
    return Objects.requireNonNull(seats.get(lane), lane::name);
  }

  private void watched(Lane lane, Handler handler, Context context) throws Exception {
    WatchedEndPoint end = context.attribute(BodyFirst.END_POINT);
    try (Departures.Watch watch = departures.watch(end)) {
      Seats.Outcome outcome = of(lane).take(bounds.waiting(), watch::whenGone);
      if (outcome == Seats.Outcome.BUSY) {
        throw new BusyException(lane.retryAfterSeconds(), BUSY);
      }
      if (outcome == Seats.Outcome.LEFT) {
        return;
      }
      try {
        Work work = Work.within(bounds.budget());
        watch.whenGone(work::abandon);
        within(work, handler, context);
      } finally {
        of(lane).leave();
      }
    }
  }

  /** Runs a handler as this work; what it throws passes through the work unchanged. */
  private static void within(Work work, Handler handler, Context context) throws Exception {
    Optional<Exception> thrown =
        work.join(
            () -> {
              try {
                handler.handle(context);
                return Optional.empty();
              } catch (Exception failure) {
                return Optional.of(failure);
              } catch (OutOfMemoryError full) {
                LOG.error(
                    "{} {} needed more memory than there is", context.method(), context.path());
                return Optional.of(new BusyException(MEMORY_SECONDS, MEMORY));
              }
            });
    if (thrown.isPresent()) {
      throw thrown.get();
    }
  }

  @Override
  public void close() {
    departures.close();
  }
}
