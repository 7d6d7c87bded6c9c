package gapwise.server.security;

import io.javalin.http.Context;
import java.net.Inet6Address;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Arrays;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * From where the server can be reached.
 *
 * @param host the address that it listens on
 * @param behindProxy whether another server on this machine stands before it, which ends TLS and
 *     says so in {@code X-Forwarded-Proto} and {@code X-Forwarded-For}; those headers are believed
 *     of nobody else
 */
public record Reach(String host, boolean behindProxy) {
  private static final Pattern IPV4 = Pattern.compile("\\d{1,3}(\\.\\d{1,3}){3}");
  private static final Pattern IPV6 = Pattern.compile("[0-9a-fA-F:.]*:[0-9a-fA-F:.]*");

  /** Bytes of an address that are kept: 24 bits of the older kind, 48 of the newer. */
  private static final int KEPT_OF_4 = 3;

  private static final int KEPT_OF_6 = 6;

  /** A household or office has 64 bits of addresses of the newer kind for itself. */
  private static final int ONE_SITE = 8;

  public Reach {
    Objects.requireNonNull(host, "host");
  }

  /** Whether it can be reached from this machine alone. */
  public boolean isThisMachineAlone() {
    return SameOrigin.isLoopback(host) && !behindProxy;
  }

  /** Whether a request came by HTTPS, as far as the server before this one. */
  public boolean isSecure(Context context) {
    return isOfProxy(context)
        && last(context, "X-Forwarded-Proto").filter("https"::equalsIgnoreCase).isPresent();
  }

  /**
   * The address that a request came from, as people count: a whole site of the newer kind is one.
   */
  public String peer(Context context) {
    return address(context).map(one -> cut(one, one.getAddress().length, ONE_SITE)).orElse("");
  }

  /** The same, shortened so that it names no one household. */
  public String shortPeer(Context context) {
    return address(context).map(one -> cut(one, KEPT_OF_4, KEPT_OF_6)).orElse("");
  }

  private Optional<InetAddress> address(Context context) {
    Optional<InetAddress> next = parsed(context.req().getRemoteAddr());
    return isOfProxy(context)
        ? last(context, "X-Forwarded-For").flatMap(Reach::parsed).or(() -> next)
        : next;
  }

  private boolean isOfProxy(Context context) {
    return behindProxy
        && parsed(context.req().getRemoteAddr()).filter(InetAddress::isLoopbackAddress).isPresent();
  }

  /** What the server just before this one says; what stands before that, anybody may have sent. */
  private static Optional<String> last(Context context, String name) {
    String value = Optional.ofNullable(context.header(name)).orElse("");
    return Optional.of(value.substring(value.lastIndexOf(',') + 1).strip())
        .filter(text -> !text.isEmpty());
  }

  /** An address in digits; a name is none, and nobody is asked for it. */
  private static Optional<InetAddress> parsed(String text) {
    String bare =
        text.startsWith("[") && text.endsWith("]") ? text.substring(1, text.length() - 1) : text;
    if (!IPV4.matcher(bare).matches() && !IPV6.matcher(bare).matches()) {
      return Optional.empty();
    }
    try {
      return Optional.of(InetAddress.getByName(bare));
    } catch (UnknownHostException none) {
      return Optional.empty();
    }
  }

  private static String cut(InetAddress address, int of4, int of6) {
    if (address.isLoopbackAddress()) {
      return "this machine";
    }
    byte[] bytes = address.getAddress();
    int kept = address instanceof Inet6Address ? of6 : of4;
    Arrays.fill(bytes, Math.min(kept, bytes.length), bytes.length, (byte) 0);
    try {
      return InetAddress.getByAddress(bytes).getHostAddress();
    } catch (UnknownHostException e) {
      throw new IllegalStateException("an address has 4 or 16 bytes", e);
    }
  }
}
