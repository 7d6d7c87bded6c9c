package gapwise.server.admission;

import java.io.IOException;
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
 * and goes. When all is there the request is handled; when it is refused the answer is sent at
 * once.
 */
final class Arrival {
  private static final Logger LOG = LoggerFactory.getLogger(Arrival.class);

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
      refuse(Refusal.tooLarge(largest));
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
          refuse(Refusal.tooSlow());
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
      Optional<Refusal> against = keep(chunk);
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

  private Optional<Refusal> keep(Content.Chunk chunk) {
    came += chunk.remaining();
    if (came > largest) {
      return Optional.of(Refusal.tooLarge(largest));
    }
    try {
      body.add(chunk.getByteBuffer());
      return Optional.empty();
    } catch (BusyException full) {
      return Optional.of(Refusal.busy(full));
    } catch (IOException unwritten) {
      if (FullDisk.causes(unwritten)) {
        return Optional.of(Refusal.diskFull());
      }
      LOG.error("what was sent could not be kept", unwritten);
      return Optional.of(Refusal.unkept());
    }
  }

  /** The line went silent, broke, or carried what is no body; the web server words the rest. */
  private void broken(Throwable failure) {
    if (failure instanceof TimeoutException) {
      refuse(Refusal.tooSlow());
    } else {
      callback.failed(failure);
    }
  }

  private void refuse(Refusal reason) {
    // Somebody who waits to be told to go on sends nothing that must be thrown away.
    boolean readsOn = reason.readsOn() && !request.getHeaders().contains(HttpHeader.EXPECT);
    Remainder rest = new Remainder(request, pace, largest, callback);
    refusals.answer(
        request,
        response,
        reason.status(),
        reason.words(),
        reason.retryAfterSeconds(),
        readsOn ? Callback.from(rest::throwAway, callback::failed) : callback);
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
}
