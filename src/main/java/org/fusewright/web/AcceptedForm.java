package org.fusewright.web;

import org.springframework.http.MediaType;
import org.springframework.util.MimeTypeUtils;
import org.springframework.web.HttpMediaTypeNotAcceptableException;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** Which of the forms that an answer comes in a caller likes best (Accept of RFC 9110). */
public final class AcceptedForm {
    private AcceptedForm() {}

    /**
     * @param accepted as the header says; empty for anything
     * @param forms the usual one first
     * @throws HttpMediaTypeNotAcceptableException when none will do
     */
    public static <F> F preferred(
            List<MediaType> accepted, List<F> forms, Function<F, MediaType> type)
            throws HttpMediaTypeNotAcceptableException {
        List<MediaType> wishes =
                new ArrayList<>(accepted.isEmpty() ? List.of(MediaType.ALL) : accepted);
        wishes.removeIf(wish -> wish.getQualityValue() == 0);
        MimeTypeUtils.sortBySpecificity(wishes);
        for (MediaType wanted : wishes) {
            for (F form : forms) {
                if (wanted.isCompatibleWith(type.apply(form))) {
                    return form;
                }
            }
        }
        throw new HttpMediaTypeNotAcceptableException(forms.stream().map(type).toList());
    }
}
