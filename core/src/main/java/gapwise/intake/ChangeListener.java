package gapwise.intake;

/** Hears what an import would change, one study at a time, so that nobody need hold them all. */
public interface ChangeListener {
  /** Whoever wants to know of no change. */
  ChangeListener NONE =
      new ChangeListener() {
        @Override
        public void begin() {
          return;
        }

        @Override
        public void change(StudyChange change, boolean agreed) {
          return;
        }
      };

  /** A comparison begins; what was told before is of no account any more. */
  void begin();

  /**
   * A study would take the place of another content.
   *
   * @param agreed whether a person has agreed to it
   */
  void change(StudyChange change, boolean agreed);
}
