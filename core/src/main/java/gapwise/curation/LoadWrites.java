package gapwise.curation;

import gapwise.reference.format.SearchDone;
import gapwise.reference.kept.Identity;
import gapwise.reference.kept.KeptJson;
import gapwise.reference.kept.KeptLoad;
import gapwise.reference.kept.KeptReference;
import gapwise.reference.kept.KeptSearch;
import gapwise.reference.kept.LoadedFile;
import gapwise.reference.kept.RecordSource;
import gapwise.reference.kept.SpooledRecord;
import gapwise.store.DocumentStore;
import gapwise.store.DocumentVersion;
import gapwise.store.Write;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Objects;
import java.util.Optional;

/**
 * The writes of one load, made one at a time: every reference that is new or says something new,
 * then the files, then the searches. Used once.
 *
 * <p>A record that any file gave before with the same content gets one more source. One that says
 * something else is the next version only where it comes by a file of the same name; from another
 * file it is a reference of its own, so that no file speaks for another.
 */
final class LoadWrites implements Iterator<Write> {
  private final DocumentStore store;
  private final Iterator<SpooledRecord> records;
  private final List<SearchDone> searches;
  private final Map<String, Counts> counts = new LinkedHashMap<>();

  /** What this load has written, since the store shows it only when all is written. */
  private final Map<String, KeptBriefly> written = new HashMap<>();

  private final Deque<Write> ready = new ArrayDeque<>();
  private boolean ended;

  /** A reference as far as the next record must know it. */
  private record KeptBriefly(String content, List<RecordSource> sources) {
    static KeptBriefly of(KeptReference kept) {
      return new KeptBriefly(Identity.content(kept.reference()), kept.sources());
    }

    boolean isOfLoad(String load) {
      return sources.stream().anyMatch(source -> source.load().equals(load));
    }

    boolean isOfFile(String file) {
      return sources.stream().anyMatch(source -> source.file().equals(file));
    }
  }

  private static final class Counts {
    private final LoadedFile file;
    private final boolean stoodThere;
    private int added;
    private int changed;
    private int known;

    Counts(LoadedFile file, boolean stoodThere) {
      this.file = file;
      this.stoodThere = stoodThere;
    }
  }

  LoadWrites(
      DocumentStore store,
      Iterator<SpooledRecord> records,
      List<LoadedFile> files,
      List<SearchDone> searches) {
    this.store = store;
    this.records = records;
    this.searches = List.copyOf(searches);
    for (LoadedFile file : files) {
      boolean stood = store.latest(ReferenceBase.LOAD, file.load()).isPresent();
      counts.putIfAbsent(file.load(), new Counts(file, stood));
    }
  }

  @Override
  public boolean hasNext() {
    while (ready.isEmpty() && records.hasNext()) {
      take(records.next());
    }
    if (ready.isEmpty() && !ended) {
      ended = true;
      end();
    }
    return !ready.isEmpty();
  }

  @Override
  public Write next() {
    if (!hasNext()) {
      throw new NoSuchElementException("all writes of the load were given");
    }
    return ready.remove();
  }

  private void take(SpooledRecord record) {
    RecordSource source = record.source();
    Counts count = Objects.requireNonNull(counts.get(source.load()), "the record's file");
    if (count.stoodThere) {
      count.known++;
      return;
    }
    String content = Identity.content(record.reference());
    for (int attempt = 0; ; attempt++) {
      String id = Identity.id(record.reference(), source.format(), source.file(), attempt);
      Optional<KeptBriefly> known = known(id);
      if (known.isEmpty()) {
        count.added++;
        put(new KeptReference(id, record.reference(), List.of(source)), content);
        return;
      }
      if (known.get().sources().contains(source)) {
        // The same file was handed in twice.
        count.known++;
        return;
      }
      boolean same = known.get().content().equals(content);
      if (!known.get().isOfLoad(source.load()) && (same || known.get().isOfFile(source.file()))) {
        count.known += same ? 1 : 0;
        count.changed += same ? 0 : 1;
        List<RecordSource> sources = new ArrayList<>(known.get().sources());
        sources.add(source);
        put(new KeptReference(id, record.reference(), sources), content);
        return;
      }
    }
  }

  /** A reference that stands there: written a moment ago, or in the store. */
  private Optional<KeptBriefly> known(String id) {
    return Optional.ofNullable(written.get(id)).or(() -> stored(id).map(KeptBriefly::of));
  }

  /** A damaged record counts as gone: loading it again is how it is mended. */
  private Optional<KeptReference> stored(String id) {
    return store
        .latest(ReferenceBase.REFERENCE, id)
        .filter(version -> !version.damaged())
        .flatMap(DocumentVersion::json)
        .map(json -> KeptJson.read(json, KeptReference.class));
  }

  private void put(KeptReference kept, String content) {
    written.put(kept.id(), new KeptBriefly(content, kept.sources()));
    ready.add(Write.put(ReferenceBase.REFERENCE, kept.id(), KeptJson.write(kept)));
  }

  private void end() {
    Map<String, String> byName = new HashMap<>();
    counts.values().forEach(count -> byName.put(count.file.file(), count.file.load()));
    for (KeptLoad load : loads()) {
      if (!Objects.requireNonNull(counts.get(load.file().load()), "load").stoodThere) {
        ready.add(
            Write.put(ReferenceBase.LOAD, load.file().load(), KeptJson.write(load)).expecting(0));
      }
    }
    for (SearchDone search : searches) {
      KeptSearch kept = new KeptSearch(search, search.file().map(byName::get));
      String json = KeptJson.write(kept);
      boolean stands =
          store
              .latest(ReferenceBase.SEARCH, kept.key())
              .filter(version -> !version.damaged())
              .flatMap(DocumentVersion::json)
              .filter(json::equals)
              .isPresent();
      if (!stands) {
        ready.add(Write.put(ReferenceBase.SEARCH, kept.key(), json));
      }
    }
  }

  /** What became of each file so far. */
  List<KeptLoad> loads() {
    return counts.values().stream()
        .map(count -> new KeptLoad(count.file, count.added, count.changed, count.known))
        .toList();
  }
}
