"""Papers: what a design says, as PDF for the people who must read it.

May live here: the plain contract of each paper (texts already shown in the reader's units), the adapters
that fill it from a design, the templates, the typefaces and the compiler. May not: heat loss arithmetic,
unit conversion in a template, user text as markup.
"""
