# Names of site items and grades. Finishes, incidents and sealers have their English
# names in the trade records.


term-water = water
term-eyewash = tested eyewash
term-waste-plan = waste-water plan
term-data-sheets = safety data sheets

grade-verified = verified
grade-secondary-copy = verified, secondary copy
grade-from-memory = from memory
grade-common-practice = common practice, no source
grade-expert-judgment = expert judgment

cite-common-practice = common practice
cite-none = no source
