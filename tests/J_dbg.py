from tests.losses.test_reuse import *
start = demo("ferrow-house").with_changes([{"add": "neighbors/flat", "to": {"temperature": "50 °F"}}])
e=design(start)
import time
T={}
def tm(n,f):
    t=time.time(); r=f(); T[n]=T.get(n,0)+time.time()-t; return r
for each in EDITS:
    if isinstance(each, list) or each.get("add") != "neighbors/flat":
        job=tm('edit',lambda:edited(start,each))
        a=tm('since',lambda:design(job,since=e)); b=tm('anew',lambda:design(job))
        tm('fig',lambda:(a.figures,b.figures)); tm('names',lambda:(a.names,b.names))
        try: tm('same',lambda:same(a,b))
        except AssertionError as x:
            print(each, str(x)[:200])
            x1={path: a.names.path(f) for path,f in a.results.items()}; x2={path: b.names.path(f) for path,f in b.results.items()}
            print([(k,x1[k],x2[k]) for k in x1 if x1[k]!=x2.get(k)][:10])
for each in MOVES:
        job=moved_last(start,*each)
        a,b=design(job,since=e),design(job)
        try: same(a,b)
        except AssertionError as x:
            print(each, str(x)[:200])
print(T)
