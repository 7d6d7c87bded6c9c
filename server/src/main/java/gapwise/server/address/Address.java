package gapwise.server.address;

import java.net.URLDecoder;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The part of an address after the question mark, so that every choice on a page can be kept as a
 * bookmark. Empty values are dropped; order is that of the first mention. Two are equal that hold
 * the same values.
 */
public final class Address {
  private final Map<String, List<String>> parameters;

  /** Written at the first need and kept; if two threads write it they write the same. */
  private Optional<String> written = Optional.empty();

  /**
   * Tidies what was asked for.
   *
   * @param asked values by name
   */
  public Address(Map<String, List<String>> asked) {
    this(new LinkedHashMap<>(asked), asked.keySet());
  }

  /**
   * What stands behind a question mark, as {@link #at} writes it.
   *
   * @throws IllegalArgumentException if it was written otherwise
   */
  public static Address parse(String query) {
    Map<String, List<String>> read = new LinkedHashMap<>();
    for (String pair : query.split("&")) {
      int equals = pair.indexOf('=');
      if (equals > 0) {
        String value = URLDecoder.decode(pair.substring(equals + 1), StandardCharsets.UTF_8);
        read.computeIfAbsent(
                URLDecoder.decode(pair.substring(0, equals), StandardCharsets.UTF_8),
                name -> new ArrayList<>())
            .add(value);
      }
    }
    return new Address(read);
  }

  /**
   * A page makes hundreds of addresses from one another, each with one name changed.
   *
   * @param own values by name, taken over
   * @param untidy the names whose values may be untidy
   */
  private Address(Map<String, List<String>> own, Collection<String> untidy) {
    for (String name : untidy) {
      List<String> tidy = tidied(own.getOrDefault(name, List.of()));
      if (tidy.isEmpty()) {
        own.remove(name);
      } else {
        own.put(name, tidy);
      }
    }
    parameters = Collections.unmodifiableMap(own);
  }

  private static List<String> tidied(List<String> values) {
    return values.stream().map(String::strip).filter(v -> !v.isEmpty()).distinct().toList();
  }

  /** Values by name. */
  public Map<String, List<String>> parameters() {
    return parameters;
  }

  /** All values of one name; none if it does not stand there. */
  public List<String> all(String name) {
    return parameters.getOrDefault(name, List.of());
  }

  /** The first value of a name, or an empty text. */
  public String first(String name) {
    List<String> values = all(name);
    return values.isEmpty() ? "" : values.get(0);
  }

  /** Whether a name has this value. */
  public boolean has(String name, String value) {
    return all(name).contains(value);
  }

  /** The same with one name set to one value. */
  public Address with(String name, String value) {
    return changed(name, List.of(value));
  }

  /** The same with one name set to some values. */
  public Address with(String name, List<String> values) {
    return changed(name, values);
  }

  /** The same with a further value of a name. */
  public Address and(String name, String value) {
    List<String> more = new ArrayList<>(all(name));
    more.add(value);
    return changed(name, more);
  }

  /** The same without some names. */
  public Address without(Collection<String> names) {
    if (Collections.disjoint(parameters.keySet(), names)) {
      return this;
    }
    Map<String, List<String>> left = new LinkedHashMap<>(parameters);
    left.keySet().removeAll(names);
    return new Address(left, List.of());
  }

  /** The same without one value of a name. */
  public Address without(String name, String value) {
    if (!has(name, value)) {
      return this;
    }
    List<String> left = new ArrayList<>(all(name));
    left.remove(value);
    return changed(name, left);
  }

  private Address changed(String name, List<String> values) {
    Map<String, List<String>> changed = new LinkedHashMap<>(parameters);
    changed.put(name, values);
    return new Address(changed, List.of(name));
  }

  /** The address of a path with these parameters. */
  public String at(String path) {
    return parameters.isEmpty() ? path : path + '?' + written();
  }

  /**
   * The address of a path with these parameters and then others.
   *
   * @param more parameters of other names, or none
   */
  public String at(String path, Address more) {
    if (more.parameters.isEmpty()) {
      return at(path);
    }
    return parameters.isEmpty() ? more.at(path) : path + '?' + written() + '&' + more.written();
  }

  private String written() {
    if (written.isEmpty()) {
      StringBuilder all = new StringBuilder();
      for (Map.Entry<String, List<String>> one : parameters.entrySet()) {
        String name = encoded(one.getKey());
        for (String value : one.getValue()) {
          all.append(all.length() == 0 ? "" : "&");
          all.append(name).append('=').append(encoded(value));
        }
      }
      written = Optional.of(all.toString());
    }
    return written.get();
  }

  private static String encoded(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (!standsForItself(text.charAt(i))) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
      }
    }
    return text;
  }

  private static boolean standsForItself(char letter) {
    return (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9') || letter == '-';
  }

  @Override
  public boolean equals(Object other) {
    return other instanceof Address address && parameters.equals(address.parameters);
  }

  @Override
  public int hashCode() {
    return parameters.hashCode();
  }

  @Override
  public String toString() {
    return at("");
  }
}
