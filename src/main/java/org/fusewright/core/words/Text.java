package org.fusewright.core.words;

import java.util.List;

/** Something that the program says, in no language yet; a {@link Wording} says it. */
public sealed interface Text permits Phrase, Amount, Bare, Exact, Price, Series, Verbatim {

    /** What people or the catalog gave: said as it is, in each language. */
    static Text verbatim(String text) {
        return new Verbatim(text);
    }

    /** Sentences one after the other. */
    static Text sentences(List<? extends Text> sentences) {
        return new Series(sentences, Series.SPACE);
    }

    /** Half sentences with semicolons between them. */
    static Text clauses(List<? extends Text> clauses) {
        return new Series(clauses, Series.SEMICOLON);
    }

    /** Things with commas between them. */
    static Text listed(List<? extends Text> things) {
        return new Series(things, Series.COMMA);
    }

    /** Whether it says an amount of money. */
    default boolean namesPrice() {
        return switch (this) {
            case Price _ -> true;
            case Phrase phrase ->
                    phrase.values().stream()
                            .anyMatch(value -> value instanceof Text text && text.namesPrice());
            case Series series -> series.texts().stream().anyMatch(Text::namesPrice);
            case Bare bare -> bare.figure().namesPrice();
            case Amount _, Exact _, Verbatim _ -> false;
        };
    }

    /** As documents and files say it, whoever reads them. */
    default String english() {
        return Wording.ENGLISH.say(this);
    }
}
