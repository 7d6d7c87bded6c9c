package gapwise.budget;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;

/** The most of each {@link Limit} that one piece of work may take. */
public final class Budget {
  /** What a request gets. */
  public static final Budget STANDARD = new Budget(standard());

  /** No limit at all: for tests, benchmarks and a person at their own command line who says so. */
  public static final Budget UNLIMITED = new Budget(Map.of());

  private final Map<Limit, Long> most;

  private Budget(Map<Limit, Long> most) {
    this.most = Collections.unmodifiableMap(new EnumMap<>(withType(most)));
  }

  private static Map<Limit, Long> standard() {
    Map<Limit, Long> most = new EnumMap<>(Limit.class);
    for (Limit limit : Limit.values()) {
      most.put(limit, limit.standard());
    }
    return most;
  }

  private static EnumMap<Limit, Long> withType(Map<Limit, Long> most) {
    EnumMap<Limit, Long> typed = new EnumMap<>(Limit.class);
    typed.putAll(most);
    return typed;
  }

  /**
   * The most of one limit; {@link Long#MAX_VALUE} where there is none.
   *
   * @param limit what is limited
   */
  public long most(Limit limit) {
    return most.getOrDefault(limit, Long.MAX_VALUE);
  }

  /**
   * The same with another limit.
   *
   * @param value 1 or more
   */
  public Budget with(Limit limit, long value) {
    Objects.requireNonNull(limit, "limit");
    if (value < 1) {
      throw new IllegalArgumentException(limit.code() + " must be 1 or more, was " + value);
    }
    EnumMap<Limit, Long> changed = withType(most);
    changed.put(limit, value);
    return new Budget(changed);
  }
}
