package gapwise.server.page;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * The part of an address after the question mark, so that every choice on a page can be kept as a
 * bookmark. Empty values are dropped; order is that of the first mention.
 *
 * @param parameters values by name
 */
public record Address(Map<String, List<String>> parameters) {
  public Address {
    Map<String, List<String>> kept = new LinkedHashMap<>();
    parameters.forEach(
        (name, values) -> {
          List<String> filled = isTidy(values) ? List.copyOf(values) : tidied(values);
          if (!filled.isEmpty()) {
            kept.put(name, filled);
          }
        });
    parameters = Collections.unmodifiableMap(kept);
  }

  /** A page makes hundreds of addresses from one another, whose values need no second look. */
  private static boolean isTidy(List<String> values) {
    return values.size() == 1
        && !values.get(0).isEmpty()
        && values.get(0).strip().length() == values.get(0).length();
  }

  private static List<String> tidied(List<String> values) {
    return values.stream().map(String::strip).filter(v -> !v.isEmpty()).distinct().toList();
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
    Map<String, List<String>> changed = new LinkedHashMap<>(parameters);
    changed.put(name, List.of(value));
    return new Address(changed);
  }

  /** The same with a further value of a name. */
  public Address and(String name, String value) {
    List<String> more = new ArrayList<>(all(name));
    more.add(value);
    Map<String, List<String>> changed = new LinkedHashMap<>(parameters);
    changed.put(name, more);
    return new Address(changed);
  }

  /** The same without some names. */
  public Address without(Collection<String> names) {
    Map<String, List<String>> changed = new LinkedHashMap<>(parameters);
    changed.keySet().removeAll(names);
    return new Address(changed);
  }

  /** The same without one value of a name. */
  public Address without(String name, String value) {
    List<String> left = new ArrayList<>(all(name));
    left.remove(value);
    Map<String, List<String>> changed = new LinkedHashMap<>(parameters);
    changed.put(name, left);
    return new Address(changed);
  }

  /** The address of a path with these parameters. */
  public String at(String path) {
    StringBuilder address = new StringBuilder(path);
    char before = '?';
    for (Map.Entry<String, List<String>> one : parameters.entrySet()) {
      for (String value : one.getValue()) {
        address.append(before).append(encoded(one.getKey())).append('=').append(encoded(value));
        before = '&';
      }
    }
    return address.toString();
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
}
