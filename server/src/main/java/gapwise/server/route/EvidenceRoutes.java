package gapwise.server.route;

import gapwise.server.account.Right;
import gapwise.server.home.Evidence;
import gapwise.server.home.Hold;
import gapwise.server.home.Home;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HandlerType;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.BiConsumer;

/**
 * Answers each request by the pages of one state of the evidence base, held from its first line to
 * its last, so that nothing on a page is of another state than the rest.
 */
public final class EvidenceRoutes {
  private final Home home;
  private final BiConsumer<Evidence, Routes> pages;
  private volatile Answering latest;

  private record Door(HandlerType method, String path, Right right) {}

  /** The pages made for one state. */
  private record Answering(Evidence evidence, Map<Door, Handler> handlers) {}

  /**
   * @param pages adds every address that shows evidence, answered from the state given; adds the
   *     same addresses for every state
   */
  public EvidenceRoutes(Home home, BiConsumer<Evidence, Routes> pages) {
    this.home = home;
    this.pages = pages;
    try (Hold hold = home.hold()) {
      this.latest = answering(hold.evidence());
    }
  }

  /** Adds every address. */
  public void addTo(Routes routes) {
    for (Door door : latest.handlers().keySet()) {
      Handler answer = context -> answer(door, context);
      if (door.method() == HandlerType.GET) {
        routes.get(door.path(), door.right(), answer);
      } else {
        routes.post(door.path(), door.right(), answer);
      }
    }
  }

  private void answer(Door door, Context context) throws Exception {
    try (Hold hold = home.hold()) {
      Handler handler = of(hold.evidence()).handlers().get(door);
      Objects.requireNonNull(handler, door.path()).handle(context);
    }
  }

  /** The pages of a state; those of the latest one are kept with all that they remember. */
  private Answering of(Evidence evidence) {
    Answering now = latest;
    if (now.evidence() == evidence) {
      return now;
    }
    synchronized (this) {
      if (latest.evidence() == evidence) {
        return latest;
      }
      Answering made = answering(evidence);
      if (evidence.change() >= latest.evidence().change()) {
        latest = made;
      }
      return made;
    }
  }

  private Answering answering(Evidence evidence) {
    Map<Door, Handler> handlers = new LinkedHashMap<>();
    pages.accept(
        evidence,
        new Routes() {
          @Override
          public void get(String path, Right right, Handler handler) {
            handlers.put(new Door(HandlerType.GET, path, right), handler);
          }

          @Override
          public void post(String path, Right right, Handler handler) {
            handlers.put(new Door(HandlerType.POST, path, right), handler);
          }
        });
    // In the order in which they were added, since the first that fits a request answers it.
    return new Answering(evidence, Collections.unmodifiableMap(handlers));
  }
}
