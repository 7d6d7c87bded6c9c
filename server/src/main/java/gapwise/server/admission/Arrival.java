package gapwise.server.admission;

import java.io.IOException;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.server.Handler;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.thread.Invocable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * One body on its way in. No thread waits for it: whenever something has come, some thread takes it
 * and goes. When all is there the request is handled. When it is refused the answer is sent at
 * once, and what still comes is thrown away for a while, since a line that is cut while somebody
 * sends shows her no answer.
 */
final class Arrival {
  private static final Logger LOG = LoggerFactory.getLogger(Arrival.class);
  private static final String TOO_SLOW =
      "What was sent came too slowly, so the connection was ended and nothing was taken. Try again"
          + " on a better line.";

  private final Handler next;
  private final Pace pace;
  private final KeptBody body;
  private final Refusals refusals;
  private final long largest;
  private final long begun = System.nanoTime();
  private final Request request;
  private final Response response;
  private final Callback callback;
  private long came;

  /** Why a body is not taken. */
  private record Reason(int status, String words, int retryAfterSeconds, boolean readOn) {}

  /**
   * @param next what handles the request once all is there
   * @param largest most bytes that are taken
   */
  Arrival(
      Handler next,
      Pace pace,
      KeptBody body,
      Refusals refusals,
      long largest,
      Request request,
      Response response,
      Callback callback) {
    this.next = next;
    this.pace = pace;
    this.body = body;
    this.refusals = refusals;
    this.largest = largest;
    this.request = request;
    this.response = response;
    this.callback = callback;
  }

  /** Begins to read; all may be there already. */
  void begin() {
    Request.addCompletionListener(request, failure -> forget());
    if (request.getLength() > largest) {
      refuse(tooLarge());
    } else if (take()) {
      handle();
    }
  }

  private void more() {
    if (take()) {
      // Whoever brings bytes serves other connections too and must not compute.
      request.getContext().execute(this::handle);
    }
  }

  /** Takes what is there; true when that was the last of it. */
  private boolean take() {
    while (true) {
      Content.Chunk chunk = request.read();
      if (chunk == null) {
        if (isTooSlow()) {
          refuse(tooSlow());
        } else {
          demand();
        }
        return false;
      }
      if (Content.Chunk.isFailure(chunk)) {
        broken(chunk.getFailure());
        return false;
      }
      boolean last = chunk.isLast();
      Optional<Reason> against = keep(chunk);
      chunk.release();
      if (against.isPresent()) {
        refuse(against.get());
        return false;
      }
      if (last) {
        return true;
      }
    }
  }

  /** Bytes that are kept in memory need no thread of their own; writing to a disk may take time. */
  private void demand() {
    request.demand(
        body.isInMemory()
            ? Invocable.from(Invocable.InvocationType.NON_BLOCKING, this::more)
            : this::more);
  }

  private boolean isTooSlow() {
    return pace.tooSlow(System.nanoTime() - begun, came);
  }

  private Optional<Reason> keep(Content.Chunk chunk) {
    came += chunk.remaining();
    if (came > largest) {
      return Optional.of(tooLarge());
    }
    try {
      body.add(chunk.getByteBuffer());
      return Optional.empty();
    } catch (BusyException full) {
      return Optional.of(
          new Reason(HttpStatus.SERVICE_UNAVAILABLE_503, full.getMessage(), full.seconds(), true));
    } catch (IOException unwritten) {
      if (FullDisk.causes(unwritten)) {
        return Optional.of(
            new Reason(HttpStatus.SERVICE_UNAVAILABLE_503, FullDisk.WORDS, FullDisk.SECONDS, true));
      }
      LOG.error("what was sent could not be kept", unwritten);
      return Optional.of(
          new Reason(
              HttpStatus.SERVICE_UNAVAILABLE_503,
              "What was sent could not be kept on the disk of this server, so nothing was taken."
                  + " The log of the server says more.",
              FullDisk.SECONDS,
              true));
    }
  }

  private Reason tooLarge() {
    return new Reason(
        HttpStatus.PAYLOAD_TOO_LARGE_413,
        String.format(
            Locale.ROOT,
            "What was sent is larger than this server takes here (%d MB).",
            largest >> 20),
        0,
        true);
  }

  private static Reason tooSlow() {
    return new Reason(HttpStatus.REQUEST_TIMEOUT_408, TOO_SLOW, 0, false);
  }

  /** The line went silent, broke, or carried what is no body; the web server words the rest. */
  private void broken(Throwable failure) {
    if (failure instanceof TimeoutException) {
      refuse(tooSlow());
    } else {
      callback.failed(failure);
    }
  }

  private void refuse(Reason reason) {
    // Somebody who waits to be told to go on sends nothing that must be thrown away.
    boolean readOn = reason.readOn() && !request.getHeaders().contains(HttpHeader.EXPECT);
    Callback told = readOn ? Callback.from(this::throwAway, callback::failed) : callback;
    refusals.answer(
        request, response, reason.status(), reason.words(), reason.retryAfterSeconds(), told);
  }

  private void throwAway() {
    while (true) {
      Content.Chunk chunk = request.read();
      if (chunk == null && !isTooSlow()) {
        request.demand(this::throwAway);
        return;
      }
      boolean over = chunk == null || Content.Chunk.isFailure(chunk) || chunk.isLast();
      if (chunk != null) {
        came += chunk.remaining();
        chunk.release();
      }
      if (over || came > 2 * largest) {
        callback.succeeded();
        return;
      }
    }
  }

  private void handle() {
    try {
      if (request.getAttribute(BodyFirst.END_POINT) instanceof WatchedEndPoint watched) {
        watched.underWay();
      }
      Request whole = new WholeRequest(request, body.source(request.getComponents()));
      if (!next.handle(whole, response, callback)) {
        Response.writeError(whole, response, callback, HttpStatus.NOT_FOUND_404);
      }
    } catch (Exception failure) {
      callback.failed(failure);
    }
  }

  private void forget() {
    try {
      body.close();
    } catch (IOException unforgotten) {
      LOG.warn("what was sent could not be deleted: {}", unforgotten.getMessage());
    }
  }

  /** A request whose body is read from where it was kept. */
  private static final class WholeRequest extends Request.Wrapper {
    private final Content.Source body;

    WholeRequest(Request request, Content.Source body) {
      super(request);
      this.body = body;
    }

    @Override
    public Content.Chunk read() {
      return body.read();
    }

    @Override
    public void demand(Runnable callback) {
      body.demand(callback);
    }

    @Override
    public void fail(Throwable failure) {
      body.fail(failure);
      super.fail(failure);
    }
  }
}
